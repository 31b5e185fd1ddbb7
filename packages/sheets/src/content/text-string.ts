import { groupsUsed } from "../font/repertoire";

/** A text as it stands in a content stream, between parentheses, and the character groups it needs. */
export interface TextString {
  readonly string: string;
  readonly groups: number;
}

const codes: string[] = [];

/** A character's two bytes. Half as long as hexadecimal, and half the work to compress. */
function code(unit: number): string {
  const known = codes[unit];
  if (known !== undefined) return known;
  const written = String.fromCharCode(unit >> 8, unit & 0xff)
    .replace(/[()\\]/g, "\\$&")
    .replaceAll("\r", "\\r");
  codes[unit] = written;
  return written;
}

/** Texts kept: the labels and checks that every sheet of an event repeats, with room for what it does not. */
const mostKept = 8_000;
const longestKept = 200;
const kept = new Map<string, TextString>();

export function encode(text: string): TextString {
  const known = kept.get(text);
  if (known !== undefined) return known;
  let string = "";
  for (let at = 0; at < text.length; at++) string += code(text.charCodeAt(at));
  const encoded = { string, groups: groupsUsed(text) };
  if (text.length > longestKept) return encoded;
  if (kept.size >= mostKept) kept.clear();
  kept.set(text, encoded);
  return encoded;
}
