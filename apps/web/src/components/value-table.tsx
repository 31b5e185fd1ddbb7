import type { BracketModel, Known, Verdict } from "@trunnion/register";
import type { ReactNode } from "react";
import { memo } from "react";
import { nominalAndLimits } from "../lib/figure";
import { Bracket } from "./bracket";
import { Figure } from "./figure";
import { LeaderNumber } from "./plan";
import { Provenance } from "./provenance";
import { VerdictMark, wantsAttention } from "./verdict-mark";

/** One characteristic of a car against what it is compared with. */
export interface ValueRow {
  /** Unique within its table. */
  readonly key: string;
  readonly label: string;
  /** In the club's words: left, right, nearside, offside. */
  readonly side?: string;
  /** Number of the plan's leader, where the table goes across assemblies. */
  readonly leader?: number;
  /** Nominal or limits, as written; empty where nothing is specified. */
  readonly specified: string;
  /** Empty where not recorded. */
  readonly actual: string;
  /** Expanded uncertainty of what was measured: "± 6', k = 2". */
  readonly uncertainty?: string;
  /** "+4 mm, ×1.25"; left out or empty where there is none to tell. */
  readonly difference?: string;
  readonly verdict: Verdict;
  readonly verdictText: string;
  readonly bracket?: BracketModel;
  readonly known?: Known;
  /** What supports it: drawn under how it is known. */
  readonly support?: ReactNode;
}

export interface ValueTableProps {
  /** Read out before the table. */
  readonly caption: string;
  readonly rows: readonly ValueRow[];
  /** What the car is compared with. */
  readonly baseline?: Baseline;
}

/** The works' specification, or what left the works as this very car. */
export type Baseline = "factory" | "asBuilt";

const baselineWords: Readonly<Record<Baseline, { readonly head: string; readonly none: string }>> = {
  factory: { head: "Specified", none: "not specified" },
  asBuilt: { head: "As built", none: "not known" },
};

/** State against specification. On a narrow screen each row becomes a small block, in the same order. */
export function ValueTable({ caption, rows, baseline = "factory" }: ValueTableProps) {
  return (
    <table className="value-table">
      <caption className="sr-only">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Characteristic</th>
          <th scope="col" className="value-specified">
            {baselineWords[baseline].head}
          </th>
          <th scope="col" className="value-actual">
            On the car
          </th>
          <th scope="col" className="value-difference">
            Difference
          </th>
          <th scope="col" className="value-bracket">
            <span className="sr-only">Drawn</span>
          </th>
          <th scope="col" className="value-verdict">
            Verdict
          </th>
          <th scope="col" className="value-known">
            How it is known
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={row.key} row={row} baseline={baseline} />
        ))}
      </tbody>
    </table>
  );
}

/** The nominal in its column, limits under it. */
function Specified({ text, none }: { readonly text: string; readonly none: string }) {
  if (text === "") return <span className="text-soft">{none}</span>;
  const parts = nominalAndLimits(text);
  if (parts === undefined) return <Figure text={text} column />;
  return (
    <>
      <Figure text={parts.nominal} column /> <span className="block text-fine text-soft">{parts.limits}</span>
    </>
  );
}

interface RowProps {
  readonly row: ValueRow;
  readonly baseline: Baseline;
}

/** Drawn anew only for another row: a life's page shows a hundred of them while its handle is dragged. */
const Row = memo(function Row({ row, baseline }: RowProps) {
  const words = baselineWords[baseline];
  const attention = wantsAttention(row.verdict);
  return (
    <tr>
      <th scope="row" className="value-name font-normal">
        <span className="flex items-baseline gap-2">
          {row.leader === undefined ? null : <LeaderNumber leader={row.leader} differs={attention} />}
          <span className={attention ? "font-semibold" : ""}>
            {row.label}
            {row.side === undefined ? null : <span className="font-normal text-soft">, {row.side}</span>}
          </span>
        </span>
      </th>
      <td className="value-specified">
        <span aria-hidden className="value-label">
          {words.head}
        </span>
        <Specified text={row.specified} none={words.none} />
      </td>
      <td className="value-actual">
        <span aria-hidden className="value-label">
          On the car
        </span>
        {row.actual === "" ? (
          <span className="text-soft">not recorded</span>
        ) : (
          <Figure text={row.actual} column />
        )}
        {row.uncertainty === undefined ? null : (
          <span className="block text-fine text-soft">{row.uncertainty}</span>
        )}
      </td>
      <td className="value-difference">{row.difference}</td>
      <td className="value-bracket">
        {row.bracket === undefined ? null : (
          <Bracket model={row.bracket} differs={attention && row.verdict !== "cannotTell"} />
        )}
      </td>
      <td className="value-verdict">
        <VerdictMark verdict={row.verdict} text={row.verdictText} />
      </td>
      <td className="value-known">
        {row.known === undefined ? null : <Provenance known={row.known} />}
        {row.support}
      </td>
    </tr>
  );
});
