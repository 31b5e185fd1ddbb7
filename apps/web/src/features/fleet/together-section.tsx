import type { Spread, Together, TogetherRow } from "@trunnion/api";
import { Button } from "../../components/button";
import { Choice } from "../../components/field";
import { Figure } from "../../components/figure";
import { SectionHead } from "../../components/page-head";
import { sayCars, sayCount } from "../../lib/car-count";
import { type FleetQuery, spreadPath } from "../../lib/path";

interface TogetherSectionProps {
  readonly page: Spread;
  readonly goes: Together;
  readonly query: FleetQuery & { readonly side?: string; readonly value?: string };
}

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** A probability as people read one: never "0". */
export function sayProbability(probability: number): string {
  if (probability < 0.001) return "less than 1 in 1,000";
  return probability > 0.995 ? "about 1" : probability.toPrecision(2);
}

/** "3.5", "230"; none where a place of the table is empty, so that one would divide by it. */
export function sayOdds({ oddsRatio }: Pick<TogetherRow, "oddsRatio">): string {
  if (oddsRatio === undefined) return "no ratio";
  if (oddsRatio === 0) return "0";
  return oddsRatio < 10 ? oddsRatio.toPrecision(2) : sayCount(Math.round(oddsRatio));
}

/** Which words go with a connection: how strong, which way, and how much the numbers bear. */
export function sayConnection({ phi = 0, holdsUp, small }: TogetherRow): string {
  const way = phi < 0 ? "seldom together" : "together";
  const strength = Math.abs(phi) >= 0.5 ? "strongly" : Math.abs(phi) >= 0.2 ? "moderately" : "weakly";
  const words = phi < 0 ? way : `${strength} ${way}`;
  return `${words}${holdsUp ? "" : "; may be chance"}${small ? "; small numbers" : ""}`;
}

/** Cars that have A also have B: counts, a measure, and how far the numbers bear it. */
export function TogetherSection({ page, goes, query }: TogetherSectionProps) {
  const { characteristic, club } = page;
  const { value: _value, ...rest } = query;
  return (
    <section aria-labelledby="together" className="grid grid-cols-1 gap-3">
      <SectionHead id="together" title="What goes with it" />
      <FirstForm page={page} query={query} />
      <p className="max-w-prose text-small">
        Cars on which {lowerFirst(characteristic.label)} {goes.first}, and what else differs from factory
        there. Counted are cars of which both are known, {sayCount(goes.known)} at most
        {goes.lookedAt < goes.known
          ? `; a fixed sample of ${sayCount(goes.lookedAt)} of them was looked at`
          : ""}
        .
        {goes.looked < 2
          ? ""
          : ` ${goes.looked} connections were looked for: one in twenty of those with a probability below 0.05 is chance, and “may be chance” is said of what would not stand out among so many.`}
      </p>
      {goes.rows.length === 0 ? (
        <p className="max-w-prose">
          Nothing can be told: on these cars it is the same everywhere, or nothing else is known of them.
        </p>
      ) : (
        <TogetherTable rows={goes.rows} href={(key) => spreadPath(club.slug, key, rest)} />
      )}
    </section>
  );
}

function FirstForm({ page, query }: Pick<TogetherSectionProps, "page" | "query">) {
  const { characteristic, club } = page;
  if (characteristic.kind !== "choice") return null;
  const { value, ...rest } = query;
  return (
    <form
      action={`${spreadPath(club.slug, characteristic.key)}#together`}
      method="get"
      className="print:hidden flex flex-wrap items-end gap-4"
    >
      {Object.entries(rest).map(([name, part]) =>
        part === undefined ? null : <input key={name} type="hidden" name={name} value={part} />,
      )}
      <Choice
        name="value"
        label="Cars on which it"
        value={value ?? ""}
        options={[
          { value: "", label: "differs from factory" },
          ...characteristic.choices.map(({ code, label }) => ({
            value: code,
            label: `is ${lowerFirst(label)}`,
          })),
        ]}
      />
      <Button>Count</Button>
    </form>
  );
}

interface TogetherTableProps {
  readonly rows: readonly TogetherRow[];
  readonly href: (key: string) => string;
}

function TogetherTable({ rows, href }: TogetherTableProps) {
  return (
    <table className="stack-table">
      <caption className="sr-only">What else differs, the least likely to be chance first</caption>
      <thead>
        <tr>
          <th scope="col">Also differs</th>
          <th scope="col">Of cars that have the one</th>
          <th scope="col">Of the others</th>
          <th scope="col">Together</th>
          <th scope="col" className="num">
            Phi
          </th>
          <th scope="col">Odds, times</th>
          <th scope="col">Exact probability</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key}>
            <th scope="row" className="font-normal">
              <a href={href(row.key)}>{row.label}</a>
              {row.commonest === undefined ? null : (
                <span className="block text-fine text-soft">most often {row.commonest}</span>
              )}
            </th>
            <td data-label="Of cars that have the one">
              {sayCount(row.both)} of {sayCars(row.both + row.firstOnly)}
            </td>
            <td data-label="Of the others">
              {sayCount(row.secondOnly)} of {sayCars(row.secondOnly + row.neither)}
            </td>
            <td data-label="Together">{sayConnection(row)}</td>
            <td className="run num" data-label="Phi">
              {row.phi === undefined ? "–" : row.phi.toFixed(2).replace("-", "−")}
            </td>
            <td className="run" data-label="Odds, times">
              <Figure text={sayOdds(row)} column />
            </td>
            <td className="run" data-label="Exact probability">
              <Figure text={sayProbability(row.exactProbability)} column />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
