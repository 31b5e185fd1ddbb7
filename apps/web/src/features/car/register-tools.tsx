import { compareCarsPath, listPath, type RegisterSearch, registerPath } from "../../lib/path";
import { columnsOf } from "../../lib/register-column";
import { type listOrders, orderAsked, orderBy } from "../../lib/register-order";
import type { ListView } from "../../lib/register-search";
import { longestCars, mostCompared } from "../fleet/compare-limit";
import { type Column, firstSaid } from "./order-head";

export interface RegisterToolsProps {
  readonly club: string;
  readonly search: RegisterSearch;
  /** What is shown beside. */
  readonly columns: readonly Column[];
  readonly view: ListView;
  /** Every car found, where they are all on the page. */
  readonly references: readonly string[];
}

const orders: readonly { readonly order: (typeof listOrders)[number]; readonly label: string }[] = [
  { order: "chassis", label: "By chassis number" },
  { order: "built", label: "First built first" },
  { order: "differing", label: "Most changed first" },
];
const link = "inline-flex min-h-11 items-center aria-[current=true]:font-semibold";

/** In what order and as what, which columns to leave out, and the way out as a file of just what is shown. */
export function RegisterTools({ club, search, columns, view, references }: RegisterToolsProps) {
  const { order: now = "chassis", ...unordered } = search;
  const shown = columnsOf(search).filter((key) => columns.some((one) => one.key === key));
  const beside = references.join(", ");
  const file = { ...search, ...(shown.includes("car.keeper") ? { people: "yes" as const } : {}) };
  const without = (key: string) => {
    const { col: _col, order, ...rest } = search;
    const by = orderAsked(search);
    const ordered =
      order === undefined || (typeof by === "object" && by.key === key) ? rest : { ...rest, order };
    const kept = shown.filter((one) => one !== key);
    return registerPath(club, kept.length === 0 ? ordered : { ...ordered, col: kept.join(",") });
  };
  return (
    <div className="print:hidden flex flex-wrap gap-x-6 text-small">
      {orders.map(({ order, label }) => (
        <a
          key={order}
          href={registerPath(club, order === "chassis" ? unordered : { ...unordered, order })}
          data-live={`order ${order}`}
          className={link}
          {...(order === now ? { "aria-current": "true" as const } : {})}
        >
          {label}
        </a>
      ))}
      {columns
        .filter(({ orders: may }) => may)
        .map((column) => (
          <ValueOrders key={column.key} club={club} search={search} column={column} view={view} />
        ))}
      <a
        href={registerPath(club, { ...search, view: view === "cards" ? "table" : "cards" })}
        data-live="view"
        className={link}
      >
        {view === "cards" ? "As a table" : "As cards"}
      </a>
      {shown.map((key) => (
        <a key={key} href={without(key)} data-live={`without ${key}`} className={link}>
          Without {columns.find((one) => one.key === key)?.label ?? key}
        </a>
      ))}
      {references.length > 1 && references.length <= mostCompared && beside.length <= longestCars ? (
        <a href={compareCarsPath(club, { cars: beside })} className={link}>
          These {references.length} cars side by side
        </a>
      ) : null}
      <a href={listPath(club, "found", "csv", file)} className={link}>
        These cars as CSV
      </a>
      <a href={listPath(club, "found", "xlsx", file)} className={link}>
        as XLSX
      </a>
    </div>
  );
}

type ValueOrdersProps = Pick<RegisterToolsProps, "club" | "search" | "view"> & { readonly column: Column };

/** Both directions of a characteristic, where its heading is not seen to be pressed: on cards and narrow screens. */
function ValueOrders({ club, search, column, view }: ValueOrdersProps) {
  const now = orderAsked(search);
  return [false, true].map((descending) => {
    const current = typeof now === "object" && now.key === column.key && now.descending === descending;
    const order = orderBy(column.key, descending);
    return (
      <a
        key={order}
        href={registerPath(club, { ...search, order })}
        data-live={`order ${order}`}
        className={`${link} ${view === "cards" ? "" : "wide:hidden"}`}
        {...(current ? { "aria-current": "true" as const } : {})}
      >
        {column.label}, {firstSaid(column, descending)}
      </a>
    );
  });
}
