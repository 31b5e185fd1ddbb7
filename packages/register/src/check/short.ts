import type { Check } from "./check";

const words = "nought one two three four five six seven eight nine ten eleven twelve".split(" ");
const ordinals = ["", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth"];

/** Every figure of a text as a number, small ones in words too. */
function figuresOf(text: string): ReadonlySet<number> {
  const lower = text.toLowerCase();
  const written = [...lower.matchAll(/\d+(?:[.,]\d+)?/g)].map(([figure]) => Number(figure.replace(",", ".")));
  const said = [...lower.matchAll(/[a-z]+/g)].flatMap(([word]) => {
    const at = Math.max(words.indexOf(word), ordinals.indexOf(word));
    return at < 0 ? [] : [at];
  });
  return new Set([...written, ...said]);
}

type Worded = Pick<Check, "text" | "short" | "method" | "criterion">;

/**
 * The figures that a check's wording for the printed sheet has and its full words have not, as written there: a limit
 * that was changed in the one and forgotten in the other. A sheet that asks for the old limit is worse than a long line.
 */
export function staleFigures({ text, short = "", method = "", criterion }: Worded): readonly string[] {
  const asked = "text" in criterion ? criterion.text : "";
  const known = figuresOf(`${text} ${method} ${asked}`);
  return [...short.matchAll(/\d+(?:[.,]\d+)?/g)].flatMap(([figure]) =>
    known.has(Number(figure.replace(",", "."))) ? [] : [figure],
  );
}
