import type { SubmissionLine } from "@trunnion/api";
import type { ReactNode } from "react";
import { Figure } from "../../components/figure";

export interface DifferenceTableProps {
  readonly lines: readonly SubmissionLine[];
  readonly sideWords: { readonly left: string; readonly right: string };
  /** Id of the heading that names it. */
  readonly labelledBy: string;
  /** What shows a characteristic as it is now, beside its line; left out where photos stand elsewhere. */
  readonly shownBy?: (characteristic: string) => ReactNode;
}

/** What the record says and what is handed in, side by side. */
export function DifferenceTable({ lines, sideWords, labelledBy, shownBy }: DifferenceTableProps) {
  if (lines.length === 0) return <p className="text-soft">No part can be read yet.</p>;
  return (
    <div className="overflow-x-auto">
      <table aria-labelledby={labelledBy} className="w-full max-w-4xl">
        <thead>
          <tr className="border-ink border-b text-left text-small">
            <th className="py-1 pr-6">Part</th>
            <th className="py-1 pr-6">Before</th>
            <th className="py-1 pr-6">Now</th>
            {shownBy === undefined ? null : <th className="py-1">Shown by</th>}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ characteristic, label, side, before, beforeSaid, recorded, after }) => (
            <tr key={`${characteristic} ${side}`} className="border-hair border-b align-top">
              <th scope="row" className="py-1.5 pr-6 text-left font-normal">
                {label}
                {side === "whole" ? "" : `, ${sideWords[side].toLowerCase()}`}
              </th>
              <td className="py-1.5 pr-6">
                {before === "" ? <span className="text-soft">not recorded</span> : <Figure text={before} />}
                {beforeSaid ? (
                  <span className="block text-fine text-soft">
                    the owner says so; the record has{" "}
                    {recorded === "" ? "nothing" : <strong>{recorded}</strong>}
                  </span>
                ) : null}
              </td>
              <td className="py-1.5 pr-6 font-semibold">
                <Figure text={after} />
              </td>
              {shownBy === undefined ? null : <td className="py-1.5">{shownBy(characteristic)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
