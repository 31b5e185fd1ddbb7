import type { ReactNode } from "react";
import { DefinitionTable } from "../../components/definition-table";
import { SectionHead } from "../../components/page-head";
import { ValueTable } from "../../components/value-table";
import { AssemblySections } from "../car/assembly-section";
import type { ChangeLine, DayView, DoubtLine } from "./view";

/** Before and after per characteristic, as written. */
export function ChangeList({ lines }: { readonly lines: readonly ChangeLine[] }): ReactNode {
  return (
    <ul className="grid gap-1">
      {lines.map(({ key, label, before, after }) => (
        <li key={key}>
          {label}: {before === "" ? "not recorded" : before} <span aria-hidden>→</span>
          <span className="sr-only">to</span> <strong>{after === "" ? "not recorded" : after}</strong>
        </li>
      ))}
    </ul>
  );
}

/** What the dates of the record leave open on the day. */
export function Doubts({ doubts }: { readonly doubts: readonly DoubtLine[] }): ReactNode {
  if (doubts.length === 0) return null;
  return (
    <section aria-labelledby="doubts">
      <SectionHead id="doubts" title="What the dates leave open" />
      <p className="max-w-prose text-small text-soft">
        A change of which only the year is known counts below from the last day it may have been. On this day
        the car may also have had:
      </p>
      <ul className="grid gap-1 pt-2">
        {doubts.map(({ key, label, stands, instead }) => (
          <li key={key}>
            {label}: {stands === "" ? "not recorded" : stands}, or <strong>{instead.join(", or ")}</strong>
          </li>
        ))}
      </ul>
    </section>
  );
}

export interface DayStateProps {
  readonly view: DayView;
  /** The day as written. */
  readonly on: string;
}

/** The car on the day: what differs from both baselines, then assembly by assembly. */
export function DayState({ view, on }: DayStateProps): ReactNode {
  const { deviating, fromAsBuilt, assemblies, plain, notRecorded } = view;
  return (
    <>
      <section aria-labelledby="deviations" className="timeline-below">
        <SectionHead id="deviations" title="What differed from specification" />
        {deviating.length === 0 ? (
          <p>Nothing that is recorded differed.</p>
        ) : (
          <ValueTable caption="What differed from specification, worst first" rows={deviating} />
        )}
        {notRecorded === 0 ? null : (
          <p className="pt-3 text-small text-soft">
            {notRecorded === 1 ? "1 characteristic is" : `${notRecorded} characteristics are`} not recorded
            for this day: whether they differed is not known.
          </p>
        )}
      </section>
      {fromAsBuilt.length === 0 ? null : (
        <section aria-labelledby="from-as-built" className="timeline-below">
          <SectionHead id="from-as-built" title="What differed from as built" />
          <ValueTable
            caption="What differed from as built, worst first"
            rows={fromAsBuilt}
            baseline="asBuilt"
          />
        </section>
      )}
      <section aria-labelledby="state" className="timeline-below grid gap-8">
        <SectionHead id="state" title="State, assembly by assembly">
          <span className="text-small text-soft">on {on}</span>
        </SectionHead>
        <AssemblySections assemblies={assemblies} baseline="factory" />
        {plain.length === 0 ? null : (
          <div>
            <h3 className="border-line border-b pb-1 text-lead">
              Recorded, with nothing specified to compare
            </h3>
            <DefinitionTable rows={plain.map(({ label, value, known }) => ({ label, value, known }))} />
          </div>
        )}
      </section>
    </>
  );
}
