import type { EntryLine } from "@trunnion/register";
import { Bracket } from "../../components/bracket";
import { Figure } from "../../components/figure";
import { Provenance } from "../../components/provenance";

export interface EntryTableProps {
  readonly caption: string;
  readonly lines: readonly EntryLine[];
  readonly sideWords: { readonly left: string; readonly right: string };
  /** Where an entry is changed; left out where it is not. */
  readonly change?: (entry: string) => string;
}

/** Entries of one assembly: what was specified, what may stand in for it, for which cars, and how that is known. */
export function EntryTable({ caption, lines, sideWords, change }: EntryTableProps) {
  return (
    <table className="entry-list">
      <caption className="sr-only">{caption}</caption>
      <thead>
        <tr>
          <th scope="col" className="entry-name">
            Characteristic
          </th>
          <th scope="col" className="entry-nominal">
            Nominal
          </th>
          <th scope="col" className="entry-limits">
            Limits
          </th>
          <th scope="col" className="entry-others">
            Accepted in its place
          </th>
          <th scope="col" className="entry-cars">
            Holds for
          </th>
          <th scope="col" className="entry-source">
            How it is known
          </th>
          {change === undefined ? null : (
            <th scope="col" className="entry-step">
              <span className="sr-only">Change</span>
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <Row
            key={line.id}
            line={line}
            sideWords={sideWords}
            {...(change === undefined ? {} : { change })}
          />
        ))}
      </tbody>
    </table>
  );
}

function Row({
  line,
  sideWords,
  change,
}: { readonly line: EntryLine } & Pick<EntryTableProps, "sideWords" | "change">) {
  const side = line.side === undefined ? "" : `, ${sideWords[line.side].toLowerCase()}`;
  return (
    <tr>
      <th scope="row" className="entry-name font-normal">
        {line.label}
        <span className="text-soft">{side}</span>
        {line.note === "" ? null : <span className="block text-fine text-soft">{line.note}</span>}
      </th>
      <td className="entry-nominal">
        <span aria-hidden className="entry-label">
          Nominal
        </span>
        {line.nominal === "" ? <span className="text-soft">no nominal</span> : <Figure text={line.nominal} />}
      </td>
      <td className="entry-limits">
        {line.limits === "" ? null : (
          <>
            <span aria-hidden className="entry-label">
              Limits
            </span>
            {line.limits}
            {line.bracket === undefined ? null : <Bracket model={line.bracket} width={116} />}
          </>
        )}
      </td>
      <td className="entry-others">{line.alternatives.length === 0 ? null : <Alternatives line={line} />}</td>
      <td className="entry-cars">
        <span aria-hidden className="entry-label">
          Holds for
        </span>
        {line.cars === "" ? <span className="text-soft">every car</span> : line.cars}
      </td>
      <td className="entry-source">
        <Provenance known={{ source: line.source }} />
      </td>
      {change === undefined ? null : (
        <td className="entry-step print:hidden">
          <a href={change(line.id)} className="inline-flex min-h-11 items-center">
            Change
            <span className="sr-only">
              {" "}
              {line.label}
              {side}
            </span>
          </a>
        </td>
      )}
    </tr>
  );
}

function Alternatives({ line }: { readonly line: EntryLine }) {
  const own = ({ source }: EntryLine["alternatives"][number]) =>
    source.title !== line.source.title ||
    source.locus !== line.source.locus ||
    source.trust !== line.source.trust;
  return (
    <ul>
      {line.alternatives.map((one) => (
        <li key={`${one.role} ${one.value}`}>
          <Figure text={one.value} /> <span className="text-soft">{one.roleText}</span>
          {one.note === "" ? null : <span className="block text-fine text-soft">{one.note}</span>}
          {own(one) ? <Provenance known={{ source: one.source }} /> : null}
        </li>
      ))}
    </ul>
  );
}
