import { PDFHexString, PDFString } from "pdf-lib";

/** Number of an indirect object. */
export type Ref = number;

/** A text as it stands in an object: in parentheses where it is plain, else UTF-16. */
export function textObject(text: string): string {
  if (/^[\x20-\x7e]*$/.test(text)) return `(${text.replace(/[()\\]/g, "\\$&")})`;
  return PDFHexString.fromText(text).toString();
}

export const dateObject = (date: Date): string => PDFString.fromDate(date).toString();

export const refText = (ref: Ref): string => `${ref} 0 R`;

export const refsText = (refs: readonly Ref[]): string => `[${refs.map(refText).join(" ")}]`;

/** Two decimals of a point. */
export const numberText = (value: number): string => String(Math.round(value * 100) / 100);
