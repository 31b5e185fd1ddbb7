import type { ComparedCar } from "@trunnion/api";
import { type ComparedRow, verdicts, verdictWords } from "@trunnion/register";
import { Fragment } from "react";
import { VerdictMark, wantsAttention } from "../../components/verdict-mark";
import { spreadPath } from "../../lib/path";

export interface CompareTableProps {
  readonly club: string;
  readonly cars: readonly ComparedCar[];
  readonly rows: readonly ComparedRow[];
  readonly words: { readonly left: string; readonly right: string };
}

const keyOf = ({ characteristic, side }: ComparedRow) => `${characteristic} ${side}`;

function Name({
  club,
  row,
  words,
}: Pick<CompareTableProps, "club" | "words"> & { readonly row: ComparedRow }) {
  const { characteristic, label, side } = row;
  return (
    <>
      <a href={spreadPath(club, characteristic)}>{label}</a>
      {side === "whole" ? null : <span className="text-soft">, {words[side].toLowerCase()}</span>}
    </>
  );
}

type Cell = ComparedRow["cells"][number];

/** A value, heavier where it differs, with its verdict where that wants attention. */
function CellText({ cell }: { readonly cell: Cell }) {
  return (
    <>
      <span className={cell.differs ? "font-semibold" : ""}>
        {cell.text}
        {cell.differs ? <span className="sr-only"> (differs)</span> : null}
      </span>
      {wantsAttention(cell.verdict) ? (
        <span className="block text-fine">
          <VerdictMark verdict={cell.verdict} text={verdictWords[cell.verdict]} />
        </span>
      ) : null}
    </>
  );
}

/** Two to six cars, each in its column; on a phone each characteristic is a block with the cars named in it. */
export function ColumnTable({ club, cars, rows, words }: CompareTableProps) {
  return (
    <table className="stack-table compare-table">
      <caption className="sr-only">What differs, worst first; a column for each car</caption>
      <thead>
        <tr>
          <th scope="col">Characteristic</th>
          {cars.map(({ reference }) => (
            <th key={reference} scope="col">
              {reference}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={keyOf(row)}>
            <th scope="row" className="font-normal">
              <Name club={club} row={row} words={words} />
            </th>
            {cars.map(({ reference }, place) => {
              const cell = row.cells.find(({ car }) => car === place);
              return (
                <td key={reference} data-label={reference}>
                  {cell === undefined ? (
                    <span className="text-soft">not recorded</span>
                  ) : (
                    <CellText cell={cell} />
                  )}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** How the reference itself stands: what the others are held against may be outside limits. */
function HeldVerdict({ cell }: { readonly cell: Cell | undefined }) {
  if (cell === undefined || !wantsAttention(cell.verdict)) return null;
  return (
    <span className="block text-fine">
      <VerdictMark verdict={cell.verdict} text={verdictWords[cell.verdict]} />
    </span>
  );
}

/** Most cars told by number of which something is not recorded; of a fleet hardly recorded the count says more. */
const NAMED = 8;

/** Cars that have one thing together. */
function groupsOf(
  cells: readonly Cell[],
): readonly { readonly cell: Cell; readonly cars: readonly number[] }[] {
  const groups = new Map<string, { readonly cell: Cell; readonly cars: number[] }>();
  for (const cell of cells) {
    const key = `${cell.text} ${cell.verdict}`;
    const group = groups.get(key);
    if (group) group.cars.push(cell.car);
    else groups.set(key, { cell, cars: [cell.car] });
  }
  // The worst first, as the rows are.
  const severity = ({ cell }: { readonly cell: Cell }) => verdicts.indexOf(cell.verdict);
  return [...groups.values()].sort((a, b) => severity(a) - severity(b));
}

interface DifferingTableProps extends CompareTableProps {
  /** Place of the car the others are held against. */
  readonly reference?: number;
}

/** A whole fleet: what the cars are held against, and which of them have something else. */
export function DifferingTable({ club, cars, rows, words, reference }: DifferingTableProps) {
  const someUnknown = rows.some(({ unknown }) => unknown.length > 0);
  const named = (places: readonly number[]) =>
    places.map((place, index) => (
      <Fragment key={place}>
        {index === 0 ? "" : ", "}
        <span className="whitespace-nowrap">{cars[place]?.reference}</span>
      </Fragment>
    ));
  return (
    <table className="stack-table">
      <caption className="sr-only">What differs, worst first, and on which cars</caption>
      <thead>
        <tr>
          <th scope="col">Characteristic</th>
          <th scope="col">Held against</th>
          <th scope="col">Different on</th>
          {someUnknown ? <th scope="col">Not recorded</th> : null}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={keyOf(row)}>
            <th scope="row" className="font-normal">
              <Name club={club} row={row} words={words} />
            </th>
            <td data-label="Held against">
              {row.against}
              <HeldVerdict cell={row.cells.find(({ car }) => car === reference)} />
            </td>
            <td>
              <ul className="grid gap-y-1 wide:flex wide:flex-wrap wide:items-baseline wide:gap-x-8">
                {groupsOf(row.cells.filter(({ differs }) => differs)).map(({ cell, cars: places }) => (
                  <li
                    key={`${cell.text} ${cell.verdict}`}
                    className="grid grid-cols-[6rem_1fr_auto] items-baseline gap-x-3 wide:flex"
                  >
                    <span className="font-semibold">{cell.text}</span>
                    <span>{named(places)}</span>
                    {wantsAttention(cell.verdict) ? (
                      <span className="whitespace-nowrap text-fine">
                        <VerdictMark verdict={cell.verdict} text={verdictWords[cell.verdict]} />
                      </span>
                    ) : null}
                  </li>
                ))}
              </ul>
            </td>
            {someUnknown ? (
              <td data-label="Not recorded">
                {row.unknown.length === 0
                  ? ""
                  : row.unknown.length > NAMED
                    ? `of ${row.unknown.length} cars`
                    : named(row.unknown)}
              </td>
            ) : null}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
