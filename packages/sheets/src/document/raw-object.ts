import { PDFHexString, PDFObject, type PDFRef } from "pdf-lib";

/**
 * An object already written out, Latin-1. A file to be filled in has some hundred form fields a car, and building each
 * as a tree of the library's objects costs more than drawing the sheets.
 */
export class RawObject extends PDFObject {
  constructor(private readonly text: string) {
    super();
  }

  override clone(): RawObject {
    return this;
  }

  override toString(): string {
    return this.text;
  }

  override sizeInBytes(): number {
    return this.text.length;
  }

  override copyBytesInto(buffer: Uint8Array, offset: number): number {
    const { text } = this;
    for (let at = 0; at < text.length; at++) buffer[offset + at] = text.charCodeAt(at);
    return text.length;
  }
}

/** A text as it stands in an object: in parentheses where it is plain, else UTF-16. */
export function textObject(text: string): string {
  if (/^[\x20-\x7e]*$/.test(text)) return `(${text.replace(/[()\\]/g, "\\$&")})`;
  return PDFHexString.fromText(text).toString();
}

export const refText = ({ objectNumber }: PDFRef): string => `${objectNumber} 0 R`;

/** Two decimals of a point. */
export const numberText = (value: number): string => String(Math.round(value * 100) / 100);
