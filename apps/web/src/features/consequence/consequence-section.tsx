import { type Consequence, type FigureChange, sayFigureChange } from "@trunnion/register";
import { SectionHead } from "../../components/page-head";
import { consequencePath } from "../../lib/path";

export interface ConsequenceSectionProps {
  readonly club: string;
  /** The car's reference. */
  readonly car: string;
  readonly consequences: readonly Consequence[];
  readonly lacking: readonly {
    readonly characteristic: string;
    readonly label: string;
    readonly adds: readonly string[];
  }[];
}

/** Most of what is missing that is listed; more is a page of its own one day. */
const LACKING_SHOWN = 6;

/** What the car's differences from specification do to it, in figures, each with its working one link away. */
export function ConsequenceSection({ club, car, consequences, lacking }: ConsequenceSectionProps) {
  const told = consequences.filter(({ figures }) => figures.length > 0);
  const untold = consequences.filter(({ figures }) => figures.length === 0);
  if (told.length === 0 && untold.length === 0) return null;
  const cautions = [...new Set(told.flatMap(({ caution }) => caution ?? []))];
  return (
    <section aria-labelledby="consequences" className="min-w-0">
      <SectionHead id="consequences" title="What the differences do">
        <span className="text-small text-soft">against the specification, worked out</span>
      </SectionHead>
      {told.length === 0 ? null : (
        <div className="relative overflow-x-auto">
          <table aria-labelledby="consequences" className="w-full max-w-5xl">
            <thead>
              <tr className="border-ink border-b text-left text-small">
                <th className="py-1 pr-6">Figure</th>
                <th className="py-1 pr-6 text-right">As specified</th>
                <th className="py-1 pr-6 text-right">This car</th>
                <th className="py-1 pr-6 text-right">Change</th>
                <th className="py-1">
                  <span className="sr-only">Working</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {told.flatMap((one) =>
                one.figures
                  .filter(differs)
                  .map((figure, index) => (
                    <FigureRow
                      key={`${one.id} ${figure.output}`}
                      figure={figure}
                      working={index === 0 ? consequencePath(club, car, one.id) : undefined}
                      title={one.title}
                    />
                  )),
              )}
            </tbody>
          </table>
        </div>
      )}
      {cautions.map((caution) => (
        <p key={caution} className="max-w-prose pt-3 text-small">
          <strong>Caution.</strong> {caution}
        </p>
      ))}
      <Untold consequences={untold} />
      {lacking.length === 0 ? null : (
        <details className="pt-3 text-small">
          <summary className="min-h-11 cursor-pointer py-2">What one more entry would add</summary>
          <ul className="list-disc pl-5">
            {lacking.slice(0, LACKING_SHOWN).map(({ characteristic, label, adds }) => (
              <li key={characteristic}>
                {label}: {adds.join(", ").toLowerCase()}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** A figure that reads the same on both sides is no news. */
const differs = ({ before, after }: FigureChange): boolean => before !== after;

function FigureRow({
  figure,
  working,
  title,
}: {
  readonly figure: FigureChange;
  readonly working: string | undefined;
  readonly title: string;
}) {
  const hidden = figure.onlyRatio;
  return (
    <tr className="border-hair border-b align-top">
      <th scope="row" className="py-1.5 pr-6 text-left font-normal">
        {figure.label}
      </th>
      <td className="py-1.5 pr-6 text-right tabular-nums">{hidden ? "" : (figure.before ?? "")}</td>
      <td className="py-1.5 pr-6 text-right tabular-nums">
        {hidden && figure.ratio !== undefined ? "" : (figure.after ?? "not known")}
      </td>
      <td className="whitespace-nowrap py-1.5 pr-6 text-right font-semibold tabular-nums">
        {sayFigureChange(figure)}
      </td>
      <td className="py-1.5 text-small">
        {working === undefined ? null : (
          <a href={working} aria-label={`Working: ${title}`}>
            Working
          </a>
        )}
      </td>
    </tr>
  );
}

function Untold({ consequences }: { readonly consequences: readonly Consequence[] }) {
  if (consequences.length === 0) return null;
  return (
    <details className="pt-3 text-small">
      <summary className="min-h-11 cursor-pointer py-2">
        {consequences.length === 1 ? "1 thing" : `${consequences.length} things`} that cannot be worked out
        yet
      </summary>
      <ul className="list-disc pl-5">
        {consequences.map(({ id, title, missing, refused }) => (
          <li key={id}>
            {title}:{" "}
            {missing.length > 0 ? `not recorded: ${missing.map(({ label }) => label).join(", ")}` : refused}
          </li>
        ))}
      </ul>
    </details>
  );
}
