import {
  type Consequence,
  type FigureChange,
  type ProposedConsequences,
  ratioOfFigure,
  sayConsequenceFigure,
  sayDay,
} from "@trunnion/register";
import { Gauge } from "./gauge";

export interface ConsequencePanelProps {
  readonly proposed: ProposedConsequences;
  /** Address of a consequence's working. */
  readonly workingOf: (id: string) => string;
  /** Nothing is typed that a consequence could follow from yet. */
  readonly idle: boolean;
}

/** Most of what is missing that is named. */
const SHOWN = 6;

const isTold = (figure: FigureChange) => {
  const ratio = ratioOfFigure(figure);
  return figure.onlyRatio ? ratio !== undefined && ratio !== 1 : figure.before !== figure.after;
};

/** What a change does to the car, in words, figures and a small picture, each with its working. */
export function ConsequencePanel({ proposed, workingOf, idle }: ConsequencePanelProps) {
  const { consequences, lacking, on } = proposed;
  const told = consequences.filter(({ figures }) => figures.some(isTold));
  const untold = consequences.filter(({ figures }) => !figures.some(isTold));
  const cautions = [...new Set(told.flatMap(({ caution }) => caution ?? []))];
  return (
    <div className="grid gap-4">
      {told.length === 0 ? (
        <p className="text-soft">
          {idle
            ? "Say what is on it now, and what follows is worked out here."
            : "Nothing that can be worked out moves by this, as far as the record goes."}
        </p>
      ) : (
        <ul className="grid gap-4">
          {told.map((one) => (
            <Told key={one.id} consequence={one} working={workingOf(one.id)} />
          ))}
        </ul>
      )}
      {cautions.map((caution) => (
        <p key={caution} className="max-w-prose border-red border-l-4 pl-3 text-small">
          <strong>Caution.</strong> {caution}
        </p>
      ))}
      <Missing untold={untold} lacking={lacking} />
      <p className="max-w-prose text-fine text-soft">
        Worked out for the car as recorded on {sayDay(on)}. It certifies nothing: what is assumed is said in
        each working, and local law, the organiser's regulations and a competent mechanic decide.
      </p>
    </div>
  );
}

function Told({ consequence, working }: { readonly consequence: Consequence; readonly working: string }) {
  const { title, figures, inputs, warnings } = consequence;
  const assumed = [...new Set(inputs.filter(({ origin }) => origin === "assumed").map(({ label }) => label))];
  return (
    <li className="grid gap-1 border-hair border-b pb-3">
      <div className="flex flex-wrap items-baseline justify-between gap-x-4">
        <h3 className="font-semibold">{title}</h3>
        <a href={working} className="text-small" aria-label={`Working: ${title}`}>
          Working
        </a>
      </div>
      <ul className="grid gap-2">
        {figures.filter(isTold).map((figure) => (
          <li key={figure.output} className="grid gap-1">
            <span>{sayConsequenceFigure(figure)}</span>
            <Gauge figure={figure} />
          </li>
        ))}
      </ul>
      {assumed.length === 0 ? null : <p className="text-fine text-soft">Assumed: {assumed.join("; ")}.</p>}
      {warnings.map((warning) => (
        <p key={warning} className="text-small">
          {warning}
        </p>
      ))}
    </li>
  );
}

function Missing({
  untold,
  lacking,
}: {
  readonly untold: readonly Consequence[];
  readonly lacking: ProposedConsequences["lacking"];
}) {
  const open = untold.filter(({ missing, refused }) => missing.length > 0 || refused !== undefined);
  if (open.length === 0) return null;
  return (
    <details className="text-small">
      <summary className="min-h-11 cursor-pointer py-2">
        {open.length === 1 ? "1 thing cannot" : `${open.length} things cannot`} be worked out yet, and what is
        missing
      </summary>
      <ul className="list-disc pl-5">
        {open.map(({ id, title, missing, refused }) => (
          <li key={id}>
            {title}:{" "}
            {missing.length > 0
              ? `not recorded: ${missing.map(({ label }) => label.toLowerCase()).join(", ")}`
              : refused}
          </li>
        ))}
      </ul>
      {lacking.length === 0 ? null : (
        <>
          <p className="pt-2 font-semibold">One entry more would add</p>
          <ul className="list-disc pl-5">
            {lacking.slice(0, SHOWN).map(({ characteristic, label, adds }) => (
              <li key={characteristic}>
                {label}: {adds.join(", ").toLowerCase()}
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
