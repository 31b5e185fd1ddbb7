import { builtInBook, type Characteristic, characteristicBook } from "@trunnion/register";
import { Button } from "../../components/button";
import { Choice } from "../../components/field";
import { listPath, type RegisterSearch, registerPath } from "../../lib/path";
import { columnsOf, mostColumns } from "../../lib/register-column";

export interface RegisterToolsProps {
  readonly club: string;
  readonly search: RegisterSearch;
  /** Characteristics of the club's own. */
  readonly own: readonly Characteristic[];
}

const orders = [
  { value: "", label: "By chassis number" },
  { value: "built", label: "First built first" },
  { value: "differing", label: "Most changed first" },
];
const link = "inline-flex min-h-11 items-center";

/** In what order, with which columns, and the way out as a file: plain GET forms and links. */
export function RegisterTools({ club, search, own }: RegisterToolsProps) {
  const shown = columnsOf(search);
  const book = own.length === 0 ? builtInBook : characteristicBook(own);
  const without = (key: string) => {
    const { col: _col, ...rest } = search;
    const kept = shown.filter((one) => one !== key);
    return registerPath(club, kept.length === 0 ? rest : { ...rest, col: kept.join(",") });
  };
  const { order, ...others } = search;
  const free = book.all.filter(({ key }) => !shown.includes(key));
  return (
    <div className="print:hidden flex flex-wrap items-end gap-x-6 gap-y-3 pt-5">
      <form action={registerPath(club)} method="get" className="flex flex-wrap items-end gap-3">
        {Object.entries(others).map(([name, value]) =>
          name === "col" || value === undefined ? null : (
            <input key={name} type="hidden" name={name} value={value} />
          ),
        )}
        <Choice name="order" label="Order" value={order ?? ""} options={orders} />
        {shown.map((key) => (
          <input key={key} type="hidden" name="with" value={key} />
        ))}
        {shown.length >= mostColumns ? null : (
          <Choice
            name="with"
            label="Show beside"
            value=""
            options={[
              { value: "", label: "Nothing more" },
              ...free.map(({ key, label }) => ({ value: key, label })),
            ]}
          />
        )}
        <Button>Lay out</Button>
      </form>
      <p className="flex flex-wrap gap-x-5 text-small">
        {shown.map((key) => (
          <a key={key} href={without(key)} className={link}>
            Without {book.find(key)?.label ?? key}
          </a>
        ))}
        <a href={listPath(club, "cars", "csv", search)} className={link}>
          These cars as CSV
        </a>
        <a href={listPath(club, "cars", "xlsx", search)} className={link}>
          as XLSX
        </a>
      </p>
    </div>
  );
}
