import type { CharacteristicBook } from "@trunnion/register";
import { listPath, type RegisterSearch, registerPath } from "../../lib/path";
import { columnsOf } from "../../lib/register-column";
import type { ListView, listOrders } from "../../lib/register-search";

export interface RegisterToolsProps {
  readonly club: string;
  readonly search: RegisterSearch;
  readonly book: CharacteristicBook;
  readonly view: ListView;
}

const orders: readonly { readonly order: (typeof listOrders)[number]; readonly label: string }[] = [
  { order: "chassis", label: "By chassis number" },
  { order: "built", label: "First built first" },
  { order: "differing", label: "Most changed first" },
];
const link = "inline-flex min-h-11 items-center aria-[current=true]:font-semibold";

/** In what order and as what, which columns to leave out, and the way out as a file of just what is shown. */
export function RegisterTools({ club, search, book, view }: RegisterToolsProps) {
  const { order: now = "chassis", ...unordered } = search;
  const shown = columnsOf(search);
  const without = (key: string) => {
    const { col: _col, ...rest } = search;
    const kept = shown.filter((one) => one !== key);
    return registerPath(club, kept.length === 0 ? rest : { ...rest, col: kept.join(",") });
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
      <a
        href={registerPath(club, { ...search, view: view === "cards" ? "table" : "cards" })}
        data-live="view"
        className={link}
      >
        {view === "cards" ? "As a table" : "As cards"}
      </a>
      {shown.map((key) => (
        <a key={key} href={without(key)} data-live={`without ${key}`} className={link}>
          Without {book.find(key)?.label ?? key}
        </a>
      ))}
      <a href={listPath(club, "found", "csv", search)} className={link}>
        These cars as CSV
      </a>
      <a href={listPath(club, "found", "xlsx", search)} className={link}>
        as XLSX
      </a>
    </div>
  );
}
