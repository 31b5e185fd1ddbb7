import { withoutControls } from "./address";

/** Longest text taken from an address into a field. */
const LIMIT = 4_000;

/** What came along in the address from a form checked without a script, one text a field. */
export function typedBefore(
  query: Readonly<Record<string, string | readonly string[] | undefined>>,
): Readonly<Record<string, string>> {
  const texts = Object.entries(query).flatMap(([name, value]) => {
    const text = Array.isArray(value) ? value.at(-1) : value;
    return typeof text === "string" ? [[name, withoutControls(text).slice(0, LIMIT)] as const] : [];
  });
  return Object.fromEntries(texts);
}

/** Longest figure, and longest name of a field that holds one. */
const FIGURE = 80;
const NAME = 40;

/** The same of a form of figures: short texts under short names, as the procedures take them. */
export function figuresTyped(
  query: Readonly<Record<string, string | readonly string[] | undefined>>,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(typedBefore(query))
      .filter(([name]) => name.length <= NAME)
      .map(([name, text]) => [name, text.slice(0, FIGURE)]),
  );
}
