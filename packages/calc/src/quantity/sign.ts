import { NotationError } from "./notation-error";

const leading = /^(?:(-|\+)|(neg|negative|minus|pos|positive|plus)(?![\p{L}])\.?)\s*/iu;
const trailing = /\s+(neg|negative|pos|positive)\.?$/iu;

/** An entry without its sign. */
export interface Unsigned {
  readonly sign: 1 | -1;
  /** Where the entry starts after a leading sign. */
  readonly start: number;
  /** Where it ends before a trailing sign word. */
  readonly end: number;
}

/**
 * Takes the sign off an entry: `-`, `+`, or `neg`, `pos` and their long forms, in front or (as words) behind.
 * @throws NotationError when there are two
 */
export function readSign(text: string): Unsigned {
  const indent = text.length - text.trimStart().length;
  const before = leading.exec(text.slice(indent));
  const start = indent + (before?.[0].length ?? 0);
  const after = trailing.exec(text.slice(start));
  const end = after === null ? text.length : start + after.index;
  const second = leading.test(text.slice(start));
  if (before !== null && (after !== null || second)) {
    const place = second ? start : end;
    const problem = "there are two signs";
    throw new NotationError({
      entered: text,
      code: "TWO_SIGNS",
      place,
      problem,
      understood: ["-0°45'", "0°45' neg"],
    });
  }
  const word = (before?.[1] ?? before?.[2] ?? after?.[1] ?? "+").toLowerCase();
  return { sign: /^(?:-|neg|minus)/.test(word) ? -1 : 1, start, end };
}
