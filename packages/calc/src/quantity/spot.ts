import { NotationError, type NotationErrorDetails } from "./notation-error";

/** A text and a place in it, counted from 0. */
export interface Spot {
  readonly text: string;
  readonly at: number;
}

/** Throws what is wrong at a spot. */
export function fail(
  { text, at }: Spot,
  details: Pick<NotationErrorDetails, "code" | "problem" | "understood">,
): never {
  throw new NotationError({ entered: text, place: at, ...details });
}

/** The whole entry with one piece of it, at the spot, put differently. */
export function instead({ text, at }: Spot, piece: string, better: string): string {
  return `${text.slice(0, at)}${better}${text.slice(at + piece.length)}`.trim();
}
