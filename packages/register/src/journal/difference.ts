import type { CharacteristicBook } from "../characteristic/book";
import { carStatusWords } from "../identity/car-status";
import { sayDay } from "../identity/say-day";
import { spaced } from "./action";

/** One field of a record before and after, in words; empty where there was, or is, nothing. */
export interface FieldChange {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

export interface DifferenceWording {
  readonly book: CharacteristicBook;
  /** Words for the two sides, in the club's way. */
  readonly sides: Readonly<Record<"left" | "right", string>>;
}

const labels: Readonly<Record<string, string>> = {
  built: "Built",
  firstRegistered: "First registered",
  chassis: "Chassis number",
  claim: "Claim to the number",
  numbers: "Numbers added",
  now: "Seen or fitted",
  asBuilt: "As built",
  statusSince: "Status since",
  from: "From",
  to: "Until",
  on: "Day",
  slug: "Short name",
  keeper: "Keeper",
  entries: "Entries",
  sha256: "SHA-256 of the file",
};

/** Codes that a field holds, in words. */
const codes: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  status: { ...carStatusWords, current: "current", draft: "draft", superseded: "superseded" },
  holdsAgain: carStatusWords,
  kind: { registration: "registration mark", registerFile: "register file" },
  standing: { restamped: "re-stamped" },
  keeper: { none: "", new: "another", correct: "particulars corrected", change: "another" },
  outcome: {
    oneHolds: "one car holds it",
    allStand: "all bear it rightly",
    sameCar: "the records are of one car",
    undecided: "not decided yet",
  },
  driver: { given: "given", "not given": "not given" },
};

const uuid = /^[0-9a-f]{8}-(?:[0-9a-f]{4}-){3}[0-9a-f]{12}$/i;
const isoDay = /^\d{4}-\d{2}-\d{2}$/;

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Parts the field it was unfolded from and the characteristic. */
const within = " | ";

function labelOf(name: string, { book, sides }: DifferenceWording): string {
  const [last = "", parent] = name.split(within).reverse();
  const [key = "", side] = last.split(" ");
  const characteristic = book.find(key);
  if (characteristic === undefined) return labels[name] ?? capital(spaced(name));
  const sided = side === "left" || side === "right" ? `, ${sides[side]}` : "";
  return `${characteristic.label}${sided}${parent === "asBuilt" ? ", as built" : ""}`;
}

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function said(name: string, value: unknown): string {
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return value.map((one) => said(name, one)).join(", ");
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (isFields(value)) {
    const parts = Object.entries(value).map(([part, held]) => [spaced(part), said(part, held)] as const);
    return parts.flatMap(([part, held]) => (held === "" ? [] : `${part} ${held}`)).join(", ");
  }
  const text = String(value);
  if (isoDay.test(text)) return sayDay(text);
  return codes[name]?.[text] ?? text;
}

/** What a change of a car says of which car it was: no change of it. */
const naming: ReadonlySet<string> = new Set(["chassis", "claim"]);

/** What a change is of, told although it is the same before and after. */
const subjects: ReadonlySet<string> = new Set(["characteristic"]);

/** Keys by which rows know each other say nothing to people. */
const isKey = (value: unknown) => typeof value === "string" && uuid.test(value);

/** Maps by characteristic are told one by one, in place of the field that holds them. */
function unfolded(fields: Fields, { book }: DifferenceWording): Fields {
  const parts = Object.entries(fields).flatMap(([name, value]) => {
    const inner = isFields(value) ? Object.entries(value) : [];
    const byCharacteristic =
      isFields(value) && inner.every(([key]) => book.find(key.split(" ")[0] ?? "") !== undefined);
    if (!byCharacteristic) return [[name, value] as const];
    return inner.map(([key, held]) => [`${name}${within}${key}`, held] as const);
  });
  return Object.fromEntries(parts);
}

/**
 * What an entry of the journal changed, field by field in words: characteristics by their labels, codes and days as
 * people read them. Fields that say the same before and after, and keys of rows, are left out; the
 * characteristic that an entry is of is told once.
 */
export function fieldChanges(
  before: unknown,
  after: unknown,
  wording: DifferenceWording,
): readonly FieldChange[] {
  const [was, became] = [before, after].map((fields) => (isFields(fields) ? unfolded(fields, wording) : {}));
  const names = [...new Set([...Object.keys(was ?? {}), ...Object.keys(became ?? {})])];
  return names.flatMap((name) => {
    const [one, other] = [was?.[name], became?.[name]];
    if (isKey(one) || isKey(other)) return [];
    if (naming.has(name) && isFields(before) && !(name in before)) return [];
    const change = { label: labelOf(name, wording), before: said(name, one), after: said(name, other) };
    if (change.before !== change.after) return [change];
    return subjects.has(name) ? [{ ...change, before: "" }] : [];
  });
}
