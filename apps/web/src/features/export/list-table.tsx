import type { ExportPage } from "@trunnion/api";
import { type ListName, listPath } from "../../lib/path";

interface Row {
  readonly key: string;
  readonly list: ListName;
  readonly title: string;
  readonly text: string;
  readonly event?: string;
  /** What the personal columns are, for those who may have them. */
  readonly people?: string;
}

function rowsOf(page: ExportPage): readonly Row[] {
  return [
    {
      key: "cars",
      list: "cars",
      title: "Register of cars",
      text: `${page.cars} ${page.cars === 1 ? "car" : "cars"} with numbers, dates, status, options, remarks and how many characteristics differ`,
      ...(page.maySeeKeepers ? { people: "keepers" } : {}),
    },
    {
      key: "journal",
      list: "journal",
      title: "Journal",
      text: "Every accepted change, when, why and what it changed",
      ...(page.maySeeKeepers ? { people: "who did it" } : {}),
    },
    ...page.events.map(({ slug, name, entries }) => ({
      key: `event-${slug}`,
      list: "entries" as const,
      event: slug,
      title: `Entries of ${name}`,
      text: `${entries} ${entries === 1 ? "car" : "cars"} in running order`,
      ...(page.maySeeDrivers ? { people: "drivers" } : {}),
    })),
  ];
}

/** The lists that can be fetched, each as CSV and XLSX; with people for those who may. */
export function ListTable({ club, page }: { readonly club: string; readonly page: ExportPage }) {
  return (
    <ul className="border-hair border-t">
      {rowsOf(page).map((row) => (
        <li
          key={row.key}
          className="grid gap-x-8 gap-y-1 border-hair border-b py-3 wide:grid-cols-[1fr_20rem] wide:items-baseline"
        >
          <div>
            <h3 className="font-semibold">{row.title}</h3>
            <p className="text-small text-soft">{row.text}</p>
          </div>
          <div className="print:hidden grid gap-1 text-small">
            <Files club={club} row={row} />
            {row.people === undefined ? null : <Files club={club} row={row} people={row.people} />}
          </div>
        </li>
      ))}
    </ul>
  );
}

interface FilesProps {
  readonly club: string;
  readonly row: Row;
  readonly people?: string;
}

function Files({ club, row: { list, title, event }, people }: FilesProps) {
  const query = {
    ...(event === undefined ? {} : { event }),
    ...(people === undefined ? {} : { people: "yes" as const }),
  };
  const told = people === undefined ? title : `${title}, with ${people}`;
  return (
    <p className="flex flex-wrap items-center gap-x-5">
      {(["csv", "xlsx"] as const).map((format) => (
        <a
          key={format}
          href={listPath(club, list, format, query)}
          aria-label={`${told}, as ${format.toUpperCase()}`}
          className="inline-flex min-h-11 items-center wide:min-h-8"
        >
          {format.toUpperCase()}
        </a>
      ))}
      {people === undefined ? null : <span className="text-soft">with {people}</span>}
    </p>
  );
}
