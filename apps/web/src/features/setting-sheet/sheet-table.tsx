import type { SettingSheetPage, SheetPlace, SheetRow } from "@trunnion/api";
import type { ReactNode } from "react";
import { Bracket } from "../../components/bracket";
import { Figure } from "../../components/figure";
import { VerdictMark } from "../../components/verdict-mark";
import { sayLongDay } from "../../lib/day";
import type { SideWords } from "./side-words";

export interface SheetTableProps {
  readonly groups: SettingSheetPage["groups"];
  readonly words: SideWords;
}

/** The car seen from above, nose up: each reading with its verdict, the sheet before it, and the series. */
export function SheetTable({ groups, words }: SheetTableProps) {
  return (
    <table className="corner-table">
      <caption className="sr-only">
        Readings per corner, against limits, the sheet before and the series
      </caption>
      <thead>
        <tr>
          <th scope="col">Setting</th>
          <th scope="col">Specified</th>
          <th scope="col">{words.left}</th>
          <th scope="col">{words.right}</th>
        </tr>
      </thead>
      {groups.map(({ key, label, rows }) => (
        <tbody key={key}>
          <tr className="corner-group">
            <th scope="rowgroup" colSpan={4}>
              {label}
            </th>
          </tr>
          {rows.map((row) => (
            <Row key={row.characteristic} row={row} words={words} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function Row({ row, words }: { readonly row: SheetRow; readonly words: SideWords }) {
  const at = (side: string) => row.places.find((place) => place.side === side);
  const whole = at("whole");
  const specified = row.places.find(({ line }) => line.specified !== "")?.line.specified ?? "";
  return (
    <tr>
      <th scope="row" className="corner-name font-normal">
        {row.label}
      </th>
      <td className="corner-limits">
        {specified === "" ? <span className="text-soft">nothing specified</span> : specified}
      </td>
      {whole === undefined ? (
        <>
          <Corner place={at("left")} side={words.left} />
          <Corner place={at("right")} side={words.right} />
        </>
      ) : (
        <Corner place={whole} />
      )}
    </tr>
  );
}

function Corner({
  place,
  side,
}: {
  readonly place: SheetPlace | undefined;
  readonly side?: string;
}): ReactNode {
  const line = place?.line;
  return (
    <td
      className={side === undefined ? "corner-whole" : "corner"}
      {...(side === undefined ? { colSpan: 2 } : {})}
    >
      {side === undefined ? null : (
        <span aria-hidden className="block text-fine text-soft wide:hidden">
          {side}
        </span>
      )}
      {line === undefined || line.actual === "" ? (
        <span className="text-soft">not on this sheet</span>
      ) : (
        <span className="corner-reading">
          <Figure text={line.actual} column />
          {line.bracket === undefined ? null : (
            <Bracket
              model={line.bracket}
              others={place?.series?.others ?? []}
              differs={line.verdict === "outsideLimits"}
            />
          )}
          {line.bracket === undefined && line.verdict === "notRecorded" ? null : (
            <VerdictMark verdict={line.verdict} text={line.verdictText} />
          )}
        </span>
      )}
      {place === undefined ? null : <Beside place={place} />}
    </td>
  );
}

/** What the reading stands beside: its repeats, the sheet before, the other cars of the series. */
function Beside({ place }: { readonly place: SheetPlace }) {
  const { repeats, last, series } = place;
  return (
    <ul className="text-fine text-soft">
      {repeats === undefined ? null : (
        <li>
          {repeats.entered.length} readings: {repeats.entered.join("; ")}. Mean {repeats.mean}, standard
          deviation {repeats.deviation}
          {repeats.wide ? ": they scatter more than the instrument's uncertainty; read again." : "."}
        </li>
      )}
      {last === undefined ? null : (
        <li>
          {last.difference === "" ? "" : `${last.difference} since `}
          {last.entered} on {sayLongDay(last.on)}
        </li>
      )}
      {series === undefined ? null : (
        <li>
          {series.count === 1
            ? `the one other car of the series: ${series.median}`
            : `${series.count} others: median ${series.median}, middle half ${series.low} to ${series.high}`}
        </li>
      )}
    </ul>
  );
}
