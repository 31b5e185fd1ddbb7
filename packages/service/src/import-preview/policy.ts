import { type CharacteristicBook, type RecordedValue, stateKey } from "@trunnion/register";
import { type CarRow, valuesBefore } from "../import-chunk";

/** One thing that a row would change, before and after, in words. */
export interface PreviewLine {
  readonly what: string;
  /** Empty where nothing was known. */
  readonly before: string;
  readonly after: string;
}

/** What a row would do to a car. May hold personal data: for those who may import. */
export interface PreviewCar {
  readonly line: number;
  /** As addresses name it; a new one by the number it would get. */
  readonly car: string;
  readonly added: boolean;
  readonly lines: readonly PreviewLine[];
}

const statusNames: Readonly<Record<string, string>> = {
  inUse: "in use",
  underRestoration: "under restoration",
  laidUp: "laid up",
  dismantled: "dismantled",
  destroyed: "destroyed",
  lostFromSight: "lost from sight",
  identityDisputed: "identity disputed",
  unknown: "unknown",
};

const since = (status: string | null | undefined, from: string | null | undefined) =>
  status == null ? "" : [statusNames[status] ?? status, ...(from ? [`since ${from}`] : [])].join(" ");

function nameOf(
  book: CharacteristicBook,
  { characteristic, side }: Pick<RecordedValue, "characteristic" | "side">,
) {
  const label = book.find(characteristic)?.label ?? characteristic;
  return side === "whole" ? label : `${label}, ${side}`;
}

function factLines({ planned, record }: CarRow): readonly PreviewLine[] {
  const { row, series } = planned;
  const facts: readonly (readonly [string, string | null | undefined, string | null | undefined])[] = [
    ["Series", record?.series?.slug, series?.slug],
    ["Built", record?.built, row.built?.text],
    ["First registered", record?.firstRegistered, row.firstRegistered?.text],
    ["Remarks", record?.remarks, row.remarks],
  ];
  return facts.flatMap(([what, before, after]) =>
    after == null || after === (before ?? "") ? [] : [{ what, before: before ?? "", after }],
  );
}

function keeperLines({ planned, keeper, changes }: CarRow): readonly PreviewLine[] {
  if (changes.keeper === "none") return [];
  const { row } = planned;
  const parts = { ...row.keeper, since: row.keptSince?.text };
  const names = {
    name: "Keeper",
    address: "Keeper's address",
    email: "Keeper's e-mail",
    phone: "Keeper's telephone",
    since: "Kept since",
  };
  return (Object.keys(names) as (keyof typeof names)[]).flatMap((part) => {
    const after = parts[part];
    const before = keeper?.[part] ?? "";
    return after === undefined || after === before ? [] : [{ what: names[part], before, after }];
  });
}

function valueLines({ record, changes }: CarRow, book: CharacteristicBook): readonly PreviewLine[] {
  const had = record ? valuesBefore(changes, record) : { asBuilt: {}, now: {} };
  const lines = (values: readonly RecordedValue[], before: Readonly<Record<string, string>>, when: string) =>
    values.map((said) => ({
      what: `${nameOf(book, said)}${when}`,
      before: before[stateKey(said.characteristic, said.side)] ?? "",
      after: said.value.entered,
    }));
  return [
    ...lines(changes.asBuilt, had.asBuilt, ", as built"),
    ...changes.now.flatMap((said) =>
      lines([said], had.now, said.as === "change" ? `, changed on ${said.on}` : `, on ${said.on}`),
    ),
  ];
}

/** What a row would change on a car, in words, each before and after. */
export function previewOf(car: CarRow, book: CharacteristicBook): PreviewCar {
  const { planned, record, changes } = car;
  const { row, options } = planned;
  const status: PreviewLine[] =
    changes.status === "none"
      ? []
      : [
          {
            what: "Status",
            before: since(record?.status, record?.statusSince),
            after: since(row.status, row.statusSince?.text),
          },
        ];
  const numbers = changes.numbers.map(({ kind, number }) => ({
    what: `${kind.charAt(0).toUpperCase()}${kind.slice(1)}${kind === "registration" ? "" : " number"}`,
    before: "",
    after: number,
  }));
  const added: PreviewLine[] =
    changes.options.length === 0
      ? []
      : [{ what: "Options", before: (record?.basis.options ?? []).join(" "), after: options.join(" ") }];
  return {
    line: planned.line,
    car: record?.reference ?? (planned.claim === 1 ? row.chassis : `${row.chassis}~${planned.claim}`),
    added: record === undefined,
    lines: [
      ...factLines(car),
      ...status,
      ...numbers,
      ...added,
      ...keeperLines(car),
      ...valueLines(car, book),
    ],
  };
}
