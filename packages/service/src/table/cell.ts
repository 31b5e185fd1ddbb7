/** A cell's bare value as a workbook keeps it. */
export type RawCell = string | number | boolean | Date | null | undefined;

/** What a workbook says of a cell beside its value. */
export interface CellDetail {
  readonly formula?: string;
  /** Number format: how it is shown. */
  readonly format?: string;
  readonly error: boolean;
}

/** Literal text in a number format, without colours, conditions and locales. */
const BRACKETS = /\[[^\]]*\]/g;

/** The part of a format for positive numbers. */
function positivePart(format: string): string {
  return format.split(";")[0] ?? "";
}

/** Text that a format puts behind a number, e.g. `0.0" mm"` or `0\ "psi"`: the unit it is shown with. */
function unitIn(format: string): string {
  const bare = positivePart(format).replace(BRACKETS, "");
  const [, behind = ""] = /[0#?](?!.*[0#?])(.*)$/s.exec(bare) ?? [];
  const quoted = [...behind.matchAll(/"([^"]*)"|\\(.)/g)].map(([, text, one]) => text ?? one ?? "");
  return quoted.join("").trim();
}

/** Fifteen figures are what a workbook keeps; more are the noise of binary fractions. */
function numberText(value: number): string {
  return String(Number(value.toPrecision(15)));
}

function shownNumber(value: number, format: string | undefined): string {
  if (format === undefined) return numberText(value);
  const bare = positivePart(format)
    .replace(BRACKETS, "")
    .replace(/"[^"]*"/g, "");
  if (bare.includes("%")) return `${numberText(value * 100)} %`;
  const unit = unitIn(format);
  return unit === "" ? numberText(value) : `${numberText(value)} ${unit}`;
}

/** A date as far as it is shown: one shown as "Mar 1972" is known to the month, and the first of March is no knowledge. */
function shownDate(value: Date, format: string | undefined): string {
  if (Number.isNaN(value.getTime())) return "";
  const iso = value.toISOString();
  if (format === undefined) return iso.slice(0, 10);
  const letters = positivePart(format)
    .replace(BRACKETS, "")
    .replace(/"[^"]*"|\\./g, "")
    .toLowerCase();
  if (!letters.includes("y") && !letters.includes("d") && /[hs]/.test(letters)) return iso.slice(11, 16);
  if (letters.includes("d") || !letters.includes("y")) return iso.slice(0, 10);
  return letters.includes("m") ? iso.slice(0, 7) : iso.slice(0, 4);
}

function shown(value: RawCell, format: string | undefined): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "string") return value.replace(/\r\n?/g, "\n").trim();
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return Number.isFinite(value) ? shownNumber(value, format) : "";
  return shownDate(value, format);
}

/**
 * A workbook's cell as the text that a person sees: with the unit and to the precision its format shows. A formula is
 * what it came to when it was saved; one that was saved without that stays the formula, which is refused as such, since
 * an empty cell would say nothing where something stood.
 */
export function cellText(value: RawCell, detail?: CellDetail): string {
  const text = shown(value, detail?.format);
  if (detail?.formula !== undefined && text === "") return `=${detail.formula}`;
  return text;
}

/** Errors that formulas come to, as spreadsheets write them (ECMA-376 part 1, 18.17.3; OpenDocument 1.3 part 4, 5.12). */
export const FORMULA_ERROR =
  /^(?:#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA|SPILL!|CALC!)|Err:\d{3})$/;
