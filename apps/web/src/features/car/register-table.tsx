import { type CarStatus, carStatusWords } from "@trunnion/register";
import { type AssemblyCount, Differing } from "../../components/assembly-strip";
import { SmallPlate } from "../../components/plate";
import { carPath, type RegisterSearch } from "../../lib/path";
import { type Column, OrderHead, saidIn, sayOrder, ValueHead } from "./order-head";
import { TickBox } from "./tick-box";

/** One car of the register. Texts are shown as they are; an empty one is said to be not recorded. */
export interface RegisterRow {
  /** How the car is named in addresses. */
  readonly reference: string;
  readonly chassis: string;
  /** 2 and up for a further car that claims the same number. */
  readonly claim: number;
  readonly series: string;
  readonly built: string;
  readonly colour: string;
  readonly registration: string;
  readonly status: CarStatus;
  /** Characteristics that differ from specification. */
  readonly deviating: number;
  /** The same per assembly, in walking order, to draw where; left out, only the number is shown. */
  readonly assemblies?: readonly AssemblyCount[];
  /** What the car has of the characteristics shown beside. */
  readonly values?: Readonly<Record<string, string>>;
  /** Characteristics that are recorded and could be compared. */
  readonly compared?: number;
}

export function RegisterTable({
  club,
  search = {},
  rows,
  columns = [],
}: {
  readonly club: string;
  readonly search?: RegisterSearch;
  readonly rows: readonly RegisterRow[];
  readonly columns?: readonly Column[];
}) {
  return (
    <table className="list-table mt-4">
      <caption className="sr-only">Cars of the register{sayOrder(search, columns)}</caption>
      <thead>
        <tr>
          <OrderHead club={club} search={search} order="chassis" label="Chassis" />
          <th scope="col">Series</th>
          <OrderHead club={club} search={search} order="built" label="Built" />
          <th scope="col">Colour</th>
          <th scope="col">Registration</th>
          <th scope="col">Status</th>
          {columns.map((column) => (
            <ValueHead key={column.key} club={club} search={search} column={column} />
          ))}
          <OrderHead
            club={club}
            search={search}
            order="differing"
            label="Differs from specification, of what is recorded"
          />
        </tr>
      </thead>
      <tbody data-rows>
        {rows.map((row) => (
          <CarRow key={row.reference} club={club} row={row} columns={columns} />
        ))}
      </tbody>
    </table>
  );
}

interface CarRowProps {
  readonly club: string;
  readonly row: RegisterRow;
  readonly columns: readonly Column[];
}

function CarRow({ club, row, columns }: CarRowProps) {
  return (
    <tr>
      <th scope="row" className="list-lead font-normal">
        <TickBox reference={row.reference} />
        <SmallPlate chassis={row.chassis} href={carPath(club, row.reference)} />
        {row.claim > 1 ? <span className="pl-2 text-fine text-soft">claim {row.claim}</span> : null}
      </th>
      <td className="wide:whitespace-nowrap">{row.series}</td>
      <td>
        <Known text={row.built} label="Built" />
      </td>
      <td>
        <Known text={row.colour} label="Colour" />
      </td>
      <td>
        <Known text={row.registration} label="Registration" />
      </td>
      <td>{carStatusWords[row.status]}</td>
      {columns.map((column) => (
        <td key={column.key} {...(column.kind === "date" ? { className: "wide:whitespace-nowrap" } : {})}>
          <Known text={saidIn(column, row.values)} label={column.label} />
        </td>
      ))}
      <td className="list-strip">
        <Differing
          deviating={row.deviating}
          {...(row.assemblies === undefined ? {} : { assemblies: row.assemblies })}
          {...(row.compared === undefined ? {} : { compared: row.compared })}
        />
      </td>
    </tr>
  );
}

function Known({ text, label }: { readonly text: string; readonly label: string }) {
  if (text === "")
    return (
      <span className="text-soft">
        <span className="wide:hidden">{label} </span>not recorded
      </span>
    );
  return (
    <>
      <span aria-hidden className="text-soft wide:hidden">
        {label}{" "}
      </span>
      {text}
    </>
  );
}
