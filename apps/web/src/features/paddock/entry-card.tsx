import type { EventPack } from "@trunnion/api";
import { useState } from "react";
import { SmallPlate } from "../../components/plate";
import { VerdictMark } from "../../components/verdict-mark";
import { CheckCard } from "./check-card";
import { DecisionForm } from "./decision-form";
import type { Paddock } from "./use-paddock";
import { checksOf, type EntryView, openStations, wasRefused } from "./view";

export interface EntryCardProps {
  readonly view: EntryView;
  readonly pack: EventPack;
  readonly paddock: Paddock;
}

/** One car: what is different about it, its checks in walking order, the decision. */
export function EntryCard({ view, pack, paddock }: EntryCardProps) {
  const { sheet } = view.entry;
  const [all, setAll] = useState(false);
  const again = wasRefused(view) && !all;
  const stations = again ? openStations(view) : sheet.stations;
  const passed = checksOf(view.entry).length - stations.reduce((sum, { checks }) => sum + checks.length, 0);
  return (
    <article className="grid gap-5">
      <header className="grid gap-1">
        <p>
          <a href="#list" className="inline-flex min-h-14 items-center">
            <span aria-hidden>← </span>All cars
          </a>
        </p>
        <h1 className="flex flex-wrap items-center gap-3 text-title">
          <span>
            <span className="sr-only">Running number </span>
            {sheet.entry.runningNumber}
          </span>
          {sheet.car.onRegister ? <SmallPlate chassis={sheet.car.chassis} /> : null}
        </h1>
        <p className="text-small">
          {[sheet.car.series, sheet.car.colour, sheet.car.registration, sheet.entry.driver]
            .filter((part) => part !== "")
            .join(", ")}
        </p>
      </header>
      <Differences view={view} />
      {again ? (
        <p className="text-small">
          The car comes again: {passed} checks passed before are not shown.{" "}
          <button type="button" onClick={() => setAll(true)} className="min-h-11 underline">
            Show every check
          </button>
        </p>
      ) : null}
      {stations.map(({ station, label, checks }) => (
        <Station key={station} label={label} checks={checks} view={view} pack={pack} paddock={paddock} />
      ))}
      <DecisionForm view={view} paddock={paddock} />
    </article>
  );
}

function Differences({ view }: { readonly view: EntryView }) {
  const { deviations, notRecorded, car } = view.entry.sheet;
  return (
    <section aria-labelledby="different" className="grid gap-2 border-ink border-t-2 pt-3">
      <h2 id="different" className="text-head">
        What is different about this car
      </h2>
      {car.onRegister ? null : <p>It is not on the register: nothing is known of it.</p>}
      <ul>
        {deviations.map(({ label, side, verdict, verdictText, actual, specified, difference }) => (
          <li key={`${label} ${side ?? ""}`} className="grid gap-0.5 border-hair border-b py-2">
            <strong>
              {label}
              {side === undefined ? "" : `, ${side}`}
              {actual === "" ? "" : `: ${actual}`}
            </strong>
            <span className="flex flex-wrap gap-x-3 text-small">
              <VerdictMark verdict={verdict} text={verdictText} />
              <span className="text-soft">
                {[`specified ${specified === "" ? "not known" : specified}`, difference]
                  .filter((part) => part !== "")
                  .join("; ")}
              </span>
            </span>
          </li>
        ))}
      </ul>
      {deviations.length === 0 && car.onRegister ? <p>Nothing is known to differ.</p> : null}
      {notRecorded === 0 ? null : (
        <p className="text-small">{notRecorded} characteristics are not recorded: not known to be right.</p>
      )}
    </section>
  );
}

interface StationProps extends EntryCardProps {
  readonly label: string;
  readonly checks: EntryCardProps["view"]["entry"]["sheet"]["stations"][number]["checks"];
}

function Station({ label, checks, view, pack, paddock }: StationProps) {
  const open = checks.filter(({ id }) => view.standings.get(id)?.state === "open");
  // What follows from this car is looked at by itself, and so is what has to be measured.
  const plain = open.filter(({ special, criterion }) => !special && criterion.kind !== "measured");
  const passRest = () => {
    for (const { id: check } of plain) {
      const said = { result: "pass", note: "", readings: [], replaces: [] } as const;
      void paddock.sayOfCheck({ entryId: view.entry.entryId, check, ...said });
    }
  };
  return (
    <section aria-label={label} className="border-ink border-t-2 pt-3">
      <div className="flex flex-wrap items-baseline justify-between gap-2">
        <h2 className="text-head">{label}</h2>
        <span className="text-small">
          {open.length === 0 ? "all looked at" : `${open.length} of ${checks.length} open`}
        </span>
      </div>
      <ul>
        {checks.map((check) => (
          <CheckCard key={check.id} check={check} view={view} pack={pack} paddock={paddock} />
        ))}
      </ul>
      {plain.length < 2 ? null : (
        <button
          type="button"
          onClick={passRest}
          className="mt-3 min-h-16 w-full border border-ink bg-paper px-3 font-semibold"
        >
          I have looked at the other {plain.length} here: pass them
        </button>
      )}
    </section>
  );
}
