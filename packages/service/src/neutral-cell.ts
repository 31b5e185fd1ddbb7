/** What a cell of a list holds: a text, a number that is one, or nothing. */
export type Cell = string | number | null;

const starts = "=+\\-@\\t\\r\\n\\0＝＋－＠";
/**
 * First characters by which a spreadsheet takes a text for a formula: OWASP, "CSV Injection" (= + - @, tab, carriage
 * return, line feed, and the full-width forms), and ASVS 5.0, 1.2.10 (NUL).
 */
const FORMULA = new RegExp(`^[${starts}]`);
const MADE_HARMLESS = new RegExp(`^'(?=[${starts}])`);

/** A text that no spreadsheet takes for a formula: an apostrophe goes before one that might be. Numbers are left alone. */
export function neutral(cell: Cell): Cell {
  return typeof cell === "string" && FORMULA.test(cell) ? `'${cell}` : cell;
}

/** A text as it was before {@link neutral}: a telephone number that went out as '+47 … comes in as +47 … . */
export function unneutral(text: string): string {
  return text.replace(MADE_HARMLESS, "");
}
