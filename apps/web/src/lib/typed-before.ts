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
