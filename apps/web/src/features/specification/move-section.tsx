import type { DraftReview } from "@trunnion/api";
import { Figure } from "../../components/figure";
import { SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { VerdictMark } from "../../components/verdict-mark";
import { carPath } from "../../lib/path";
import { sayVerdict } from "./source-words";

type Moves = DraftReview["moves"];

export interface MoveSectionProps {
  readonly club: string;
  readonly moves: Moves;
  readonly sideWords: { readonly left: string; readonly right: string };
}

const count = new Intl.NumberFormat("en-GB");
const cars = (number: number) => (number === 1 ? "1 car" : `${count.format(number)} cars`);

function sayMoves({ total, carsMoved, cars: all }: Moves): string {
  if (all === 0) return "No car is filed under this series yet.";
  if (total === 0) return `Looked at ${cars(all)}: no verdict moves.`;
  const verdicts = total === 1 ? "1 verdict moves" : `${count.format(total)} verdicts move`;
  return `Looked at ${cars(all)}: ${verdicts}, on ${cars(carsMoved)}.`;
}

/** Which verdicts on which cars another version moves: counts of all, then car by car. */
export function MoveSection({ club, moves, sideWords }: MoveSectionProps) {
  const { counts, lines, total } = moves;
  return (
    <section aria-labelledby="moves">
      <SectionHead id="moves" title="Which cars that moves" />
      <p className="pb-3">{sayMoves(moves)}</p>
      {counts.length === 0 ? null : (
        <ul className="flex flex-wrap gap-x-8 gap-y-1 pb-4" aria-label="Verdicts that move">
          {counts.map(({ before, after, count: times }) => (
            <li key={`${before} ${after}`}>
              <b>{count.format(times)}</b> {sayVerdict(before)} <span aria-hidden>→</span>
              <span className="sr-only">becomes</span> {sayVerdict(after)}
            </li>
          ))}
        </ul>
      )}
      {lines.length === 0 ? null : <MoveTable club={club} lines={lines} sideWords={sideWords} />}
      {total <= lines.length ? null : (
        <p className="pt-2 text-small text-soft">
          The first {count.format(lines.length)} of {count.format(total)} are listed; the counts are of all.
        </p>
      )}
    </section>
  );
}

function MoveTable({ club, lines, sideWords }: Omit<MoveSectionProps, "moves"> & Pick<Moves, "lines">) {
  return (
    <table className="list-table">
      <caption className="sr-only">Verdicts that move, by car</caption>
      <thead>
        <tr>
          <th scope="col">Chassis</th>
          <th scope="col">Characteristic</th>
          <th scope="col">On the car</th>
          <th scope="col">Specified now</th>
          <th scope="col">Verdict now</th>
          <th scope="col">Would be specified</th>
          <th scope="col">Verdict then</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={`${line.car} ${line.characteristic} ${line.side ?? ""}`}>
            <th scope="row" className="list-lead font-normal">
              <SmallPlate chassis={line.chassis} href={carPath(club, line.car)} />
              {line.claim > 1 ? <span className="pl-2 text-fine text-soft">claim {line.claim}</span> : null}
            </th>
            <td>
              {line.label}
              {line.side === undefined ? "" : `, ${sideWords[line.side].toLowerCase()}`}
            </td>
            <td>
              {line.actual === "" ? (
                <span className="text-soft">not recorded</span>
              ) : (
                <Figure text={line.actual} />
              )}
            </td>
            <td className="basis-full">
              <Narrow>Now</Narrow>
              {line.specifiedBefore}
            </td>
            <td>
              <Verdict verdict={line.before} />
            </td>
            <td className="basis-full">
              <Narrow>Then</Narrow>
              {line.specifiedAfter}
            </td>
            <td>
              <Verdict verdict={line.after} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What a column's head says, where there are no columns. */
function Narrow({ children }: { readonly children: string }) {
  return (
    <span aria-hidden className="text-soft wide:hidden">
      {children}{" "}
    </span>
  );
}

function Verdict({ verdict }: { readonly verdict: Moves["lines"][number]["before"] }) {
  if (verdict === undefined) return <span className="text-soft">{sayVerdict(undefined)}</span>;
  return <VerdictMark verdict={verdict} text={sayVerdict(verdict)} />;
}
