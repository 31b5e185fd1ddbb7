import type { RunResult, RunStep } from "@trunnion/calc";
import { type FigureChange, sayFigureChange, type UsedInput } from "@trunnion/register";
import { Caution } from "../../components/caution";
import { Figure } from "../../components/figure";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { carPath } from "../../lib/path";

export interface WorkingPageProps {
  readonly club: ClubFace;
  readonly car: { readonly reference: string; readonly chassis: string };
  readonly title: string;
  readonly computationTitle: string;
  readonly figures: readonly FigureChange[];
  readonly working: { readonly before?: RunResult; readonly after?: RunResult };
  readonly inputs: readonly UsedInput[];
  readonly inputsBefore: readonly UsedInput[];
  readonly missing: readonly { readonly label: string }[];
  readonly warnings: readonly string[];
  readonly caution?: string;
  readonly validity: string;
  /** What the two sides are called, and where one came from; left out: the specification, and the car as it is. */
  readonly of?: {
    readonly before: string;
    readonly after: string;
    readonly back: { readonly href: string; readonly label: string };
  };
  readonly source: readonly { readonly title: string; readonly locus?: string; readonly status: string }[];
}

const origins: Readonly<Record<UsedInput["origin"], string>> = {
  specification: "specification",
  asBuilt: "as built",
  modification: "this record: modified",
  reading: "this record: seen or measured",
  assumed: "assumed",
  computed: "worked out from other figures",
};

/** How one figure came about: inputs and where each came from, formulas, what holds, who says so. */
export function WorkingPage(props: WorkingPageProps) {
  const { club, car, title, computationTitle, figures, working, caution, validity, source, warnings } = props;
  const of = props.of ?? {
    before: "As specified",
    after: "This car",
    back: { href: carPath(club.slug, car.reference), label: car.chassis },
  };
  return (
    <>
      <PageHead
        title={title}
        back={of.back}
        plate={<Plate chassis={car.chassis} />}
        lead={computationTitle}
      />
      <div className="grid gap-8">
        {caution === undefined ? null : <Caution cautions={[caution]} />}
        <section aria-labelledby="figures">
          <SectionHead id="figures" title="What comes out" />
          <ul>
            {figures.map((figure) => (
              <li key={figure.output} className="border-hair border-b py-1.5">
                {figure.label}:{" "}
                {figure.onlyRatio && figure.ratio !== undefined
                  ? ""
                  : [figure.before, figure.after].filter((text) => text !== undefined).join(" → ")}{" "}
                <strong>{sayFigureChange(figure)}</strong>
              </li>
            ))}
          </ul>
          {warnings.map((warning) => (
            <p key={warning} className="pt-2 text-small">
              {warning}
            </p>
          ))}
        </section>
        <Inputs inputs={props.inputs} inputsBefore={props.inputsBefore} missing={props.missing} of={of} />
        <section aria-labelledby="working">
          <SectionHead id="working" title="Working" />
          <div className="grid gap-x-12 gap-y-6 wide:grid-cols-2">
            {working.before === undefined ? null : <Steps title={of.before} run={working.before} />}
            {working.after === undefined ? null : <Steps title={of.after} run={working.after} />}
          </div>
        </section>
        <section aria-labelledby="validity" className="max-w-prose">
          <SectionHead id="validity" title="Where it holds, and who says so" />
          <p>{validity}</p>
          <ul className="list-disc pt-2 pl-5 text-small">
            {source.map((one) => (
              <li key={`${one.title} ${one.locus ?? ""}`}>
                {[one.title, one.locus].filter(Boolean).join(", ")}
                {one.status === "memory" ? " (from memory)" : ""}
              </li>
            ))}
          </ul>
        </section>
      </div>
    </>
  );
}

interface InputRow {
  readonly field: string;
  readonly label: string;
  readonly before: string;
  readonly after: string;
  readonly from: string;
}

/**
 * One row an input, with what it was and what it is. A computation that compares has both sides in one input, as
 * `before.…` and `after.…`; another was run twice.
 */
function inputRows(inputs: readonly UsedInput[], inputsBefore: readonly UsedInput[]): readonly InputRow[] {
  const was = new Map(inputsBefore.map((input) => [input.field, input]));
  const sides = new Map(inputs.map((input) => [input.field, input]));
  return inputs.flatMap((input): InputRow[] => {
    const { field, label, text, origin } = input;
    const other = field.startsWith("after.") ? sides.get(`before.${field.slice(6)}`) : was.get(field);
    if (field.startsWith("before.")) {
      const row = { field, label, before: text, after: "", from: origins[origin] };
      return sides.has(`after.${field.slice(7)}`) ? [] : [row];
    }
    const from =
      other === undefined || other.origin === origin
        ? origins[origin]
        : `${origins[origin]}; before: ${origins[other.origin]}`;
    return [{ field, label, before: other?.text ?? "", after: text, from }];
  });
}

function Inputs({
  inputs,
  inputsBefore,
  missing,
  of,
}: Pick<WorkingPageProps, "inputs" | "inputsBefore" | "missing"> & Required<Pick<WorkingPageProps, "of">>) {
  const rows = inputRows(inputs, inputsBefore);
  return (
    <section aria-labelledby="inputs" className="min-w-0">
      <SectionHead id="inputs" title="What went in" />
      <div className="overflow-x-auto">
        <table aria-labelledby="inputs" className="w-full max-w-4xl text-small">
          <thead>
            <tr className="border-ink border-b text-left">
              <th className="py-1 pr-6">Input</th>
              <th className="py-1 pr-6">{of.before}</th>
              <th className="py-1 pr-6">{of.after}</th>
              <th className="py-1">From</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ field, label, before, after, from }) => (
              <tr key={field} className="border-hair border-b align-top">
                <th scope="row" className="py-1 pr-6 text-left font-normal">
                  {label}
                </th>
                <td className="py-1 pr-6">
                  <Figure text={before} />
                </td>
                <td className="py-1 pr-6 font-semibold">
                  <Figure text={after} />
                </td>
                <td className="py-1">{from}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {missing.length === 0 ? null : (
        <p className="pt-2 text-small">Not recorded: {missing.map(({ label }) => label).join(", ")}.</p>
      )}
    </section>
  );
}

function Steps({ title, run }: { readonly title: string; readonly run: RunResult }) {
  return (
    <div>
      <h3 className="pb-1 font-semibold">{title}</h3>
      <ol className="text-small">
        {run.working.map((step) => (
          <Step key={`${step.symbol} ${step.label}`} step={step} />
        ))}
      </ol>
    </div>
  );
}

function Step({ step: { symbol, label, formula, text, note } }: { readonly step: RunStep }) {
  return (
    <li className="grid grid-cols-[4rem_1fr_auto] gap-x-3 border-hair border-b py-1">
      <span className="italic">{symbol}</span>
      <span>
        {label}
        {formula === undefined ? null : <span className="block text-soft">{formula}</span>}
        {note === undefined ? null : <span className="block text-soft">{note}</span>}
      </span>
      <span className="text-right tabular-nums">{text}</span>
    </li>
  );
}
