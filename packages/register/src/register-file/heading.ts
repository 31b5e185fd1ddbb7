import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic, Side } from "../characteristic/characteristic";
import type { Epoch } from "./serial-day";

/** Columns of a register file that are not values of a characteristic, with the headings people write for them. */
export const plainHeadings = {
  chassis: ["chassis", "chassis no", "chassis number"],
  claim: ["claim", "claimant"],
  series: ["series", "model series", "type"],
  commission: ["commission", "commission no", "commission number"],
  engine: ["engine no", "engine number"],
  body: ["body no", "body number"],
  registration: ["registration", "registration mark", "registration no", "reg"],
  built: ["built", "build date", "date of build"],
  firstRegistered: ["first registered", "first registration"],
  status: ["status"],
  statusSince: ["status since"],
  options: ["options", "option codes"],
  keeper: ["keeper", "keeper name", "owner"],
  keeperAddress: ["keeper address", "address"],
  keeperEmail: ["keeper e-mail", "keeper email", "e-mail", "email"],
  keeperPhone: ["keeper telephone", "keeper phone", "telephone", "phone"],
  keptSince: ["kept since", "keeper since"],
  recordedOn: ["recorded on", "seen on"],
  measuredOn: ["measured on"],
  changedOn: ["changed on"],
  changedBecause: ["changed because", "reason for change"],
  donor: ["donor", "supplier", "donor or supplier"],
  remarks: ["remarks", "notes", "comment"],
} as const;
export type PlainColumn = keyof typeof plainHeadings;

/** Headings of this program's own lists whose cells it works out from the record: read in again they say nothing new. */
export const derivedHeadings = {
  differing: "Characteristics that differ from factory",
  compared: "Characteristics compared",
} as const;

/** What a column of the file holds. */
export type Column =
  | {
      readonly kind: "plain";
      readonly index: number;
      readonly heading: string;
      readonly column: PlainColumn;
      /** Year from whose first days a date's bare number counts, where the column holds such numbers. */
      readonly epoch?: Epoch;
    }
  | {
      readonly kind: "value";
      readonly index: number;
      readonly heading: string;
      readonly when: "asBuilt" | "now";
      readonly characteristic: Characteristic;
      readonly sides: readonly Side[];
      readonly defaultUnit?: string;
    }
  /** Nothing known: its cells go to the remarks, so that none is lost. */
  | { readonly kind: "unknown"; readonly index: number; readonly heading: string }
  /** Left out because somebody said so, or because it is worked out from the record anyway. */
  | { readonly kind: "ignored"; readonly index: number; readonly heading: string; readonly derived?: true };

/** Small letters, no accents, single blanks: how headings are compared. */
export function foldHeading(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[._]/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

const byFolded = new Map<string, PlainColumn>(
  Object.entries(plainHeadings).flatMap(([column, headings]) =>
    headings.map((heading) => [foldHeading(heading), column as PlainColumn] as const),
  ),
);

const derived = new Set<string>(Object.values(derivedHeadings).map(foldHeading));

const VALUE = /^(as built|now)\s*:\s*(.+?)\s*(?:\[([^\]]*)\])?\s*$/i;
const SIDE = /^(.*?)[\s,(]+(left|right|l|r)\)?$/i;

function sidesOf(characteristic: Characteristic, side: string | undefined): readonly Side[] {
  if (!characteristic.sided) return ["whole"];
  if (side === undefined) return ["left", "right"];
  return [side.toLowerCase().startsWith("l") ? "left" : "right"];
}

function valueColumn(heading: string, index: number, book: CharacteristicBook): Column | undefined {
  const [, when, name, unit] = VALUE.exec(heading) ?? [];
  if (when === undefined || name === undefined) return undefined;
  const whole = book.named(name);
  const [, stem, side] = SIDE.exec(name) ?? [];
  const characteristic = whole ?? (stem === undefined ? undefined : book.named(stem));
  if (!characteristic) return undefined;
  const sided = whole ? undefined : side;
  if (sided !== undefined && !characteristic.sided) return undefined;
  return {
    kind: "value",
    index,
    heading,
    when: when.toLowerCase() === "now" ? "now" : "asBuilt",
    characteristic,
    sides: sidesOf(characteristic, sided),
    ...(unit === undefined || unit === "" ? {} : { defaultUnit: unit }),
  };
}

/** What each column of a register file holds, in the file's order. */
export function readHeadings(headings: readonly string[], book: CharacteristicBook): readonly Column[] {
  return headings.map((heading, index) => readHeading(heading, index, book));
}

/** What one column holds, by its heading alone. */
export function readHeading(heading: string, index: number, book: CharacteristicBook): Column {
  const column = byFolded.get(foldHeading(heading));
  if (column) return { kind: "plain", index, heading, column };
  if (derived.has(foldHeading(heading))) return { kind: "ignored", index, heading, derived: true };
  return valueColumn(heading, index, book) ?? { kind: "unknown", index, heading };
}

/** Columns that hold the same thing, by pairs of headings; a file must not have any. */
export function columnsTwice(columns: readonly Column[]): readonly (readonly [string, string])[] {
  const seen = new Map<string, string>();
  const pairs: [string, string][] = [];
  for (const column of columns) {
    for (const key of keysOf(column)) {
      const earlier = seen.get(key);
      if (earlier !== undefined) pairs.push([earlier, column.heading]);
      else seen.set(key, column.heading);
    }
  }
  return pairs;
}

function keysOf(column: Column): readonly string[] {
  if (column.kind === "plain") return [column.column];
  if (column.kind !== "value") return [];
  return column.sides.map((side) => `${column.when} ${column.characteristic.key} ${side}`);
}

/** Letter of a column as a spreadsheet shows it: 0 is A, 26 is AA. */
export function columnLetter(index: number): string {
  const rest = Math.floor(index / 26);
  const letter = String.fromCharCode(65 + (index % 26));
  return rest === 0 ? letter : columnLetter(rest - 1) + letter;
}
