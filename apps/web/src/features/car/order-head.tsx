import type { RegisterList } from "@trunnion/api";
import { sayDay } from "@trunnion/register";
import { type RegisterSearch, registerPath } from "../../lib/path";
import { type listOrders, orderAsked, orderBy } from "../../lib/register-order";

/** What is shown beside. */
export type Column = RegisterList["columns"][number];

/** What stands first, by kind of value and direction. */
const firstWords: Readonly<Record<Column["kind"], readonly [up: string, down: string]>> = {
  quantity: ["lowest first", "highest first"],
  date: ["earliest first", "latest first"],
  text: ["A to Z", "Z to A"],
  choice: ["A to Z", "Z to A"],
  designation: ["A to Z", "Z to A"],
};

/** "lowest first" */
export const firstSaid = ({ kind }: Column, descending: boolean): string =>
  firstWords[kind][descending ? 1 : 0];

/** What stands in a column of a car: a day of the program's own as days are written, anything else as entered. */
export function saidIn({ key, kind, orders }: Column, values: Readonly<Record<string, string>> = {}): string {
  const text = values[key] ?? "";
  return kind === "date" && !orders && text !== "" ? sayDay(text) : text;
}

/** ", by front camber, lowest first; …": for a caption; nothing where the list goes by no characteristic. */
export function sayOrder(search: RegisterSearch, columns: readonly Column[]): string {
  const order = orderAsked(search);
  if (order === undefined || typeof order === "string") return "";
  const column = columns.find(({ key }) => key === order.key);
  if (column === undefined) return "";
  const sides = column.kind === "quantity" ? "; of two sides the one further on counts" : "";
  return `, by ${column.label}, ${firstSaid(column, order.descending)}${sides}; not recorded last`;
}

interface HeadProps {
  readonly club: string;
  readonly search: RegisterSearch;
}

interface OrderHeadProps extends HeadProps {
  readonly order: (typeof listOrders)[number];
  readonly label: string;
}

const arrow = (descending: boolean) => (
  <span aria-hidden className="print:hidden">
    {" "}
    {descending ? "↓" : "↑"}
  </span>
);

/** A heading that puts the list in its order; the order it is in is said, and is no link. */
export function OrderHead({ club, search, order, label }: OrderHeadProps) {
  const { order: _order, ...rest } = search;
  const now = search.order ?? "chassis";
  const href = registerPath(club, order === "chassis" ? rest : { ...rest, order });
  const descending = order === "differing";
  return (
    <th scope="col" {...(now === order ? { "aria-sort": descending ? "descending" : "ascending" } : {})}>
      {now === order ? (
        <>
          {label}
          {arrow(descending)}
        </>
      ) : (
        <a href={href} data-live={`order ${order}`}>
          {label}
        </a>
      )}
    </th>
  );
}

/** The heading of a characteristic: puts the list in its order, and once more the other way round. */
export function ValueHead({ club, search, column }: HeadProps & { readonly column: Column }) {
  if (!column.orders) return <th scope="col">{column.label}</th>;
  const order = orderAsked(search);
  const by = typeof order === "object" && order.key === column.key ? order : undefined;
  const descending = by !== undefined && !by.descending;
  return (
    <th
      scope="col"
      {...(by === undefined ? {} : { "aria-sort": by.descending ? "descending" : "ascending" })}
    >
      <a
        href={registerPath(club, { ...search, order: orderBy(column.key, descending) })}
        data-live={`order ${column.key}`}
        title={`Put in order, ${firstSaid(column, descending)}`}
      >
        {column.label}
        {by === undefined ? null : arrow(by.descending)}
      </a>
    </th>
  );
}
