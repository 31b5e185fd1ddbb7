import { fail, instead, type Spot } from "./spot";
import { vulgarCharacters } from "./vulgar-fraction";

const thousands = [
  /^\d{1,3}(?:[ ']\d{3})+(?:[.,]\d+)?/,
  /^\d{1,3}(?:,\d{3}){2,}(?:\.\d+)?/,
  /^\d{1,3}(?:\.\d{3}){2,}(?:,\d+)?/,
  /^\d{1,3},\d{3}\.\d+/,
  /^\d{1,3}\.\d{3},\d+/,
];

/** `1 500`, `1'500`, `1,500.5`, `1.500,5`: read nowhere, because `1,500` alone cannot be. */
export function refuseThousands(spot: Spot): void {
  const rest = spot.text.slice(spot.at);
  for (const pattern of thousands) {
    const found = pattern.exec(rest)?.[0];
    if (found === undefined || /^(?:\d| *\/)/.test(rest.slice(found.length))) continue;
    const mark = /^\d+([ ',.])/.exec(found)?.[1] ?? "";
    const plain = found.replaceAll(mark, "").replace(",", ".");
    const problem = "thousands are written without a separator";
    fail(spot, { code: "THOUSANDS_SEPARATOR", problem, understood: [instead(spot, found, plain)] });
  }
}

/** `1,500` is fifteen hundred to some and one and a half to others; `0,125` and `1,5` can only be decimals. */
export function refuseDoubtfulComma(spot: Spot, found: string): void {
  const [, whole = "", decimals = ""] = /^(\d+),(\d{3})$/.exec(found) ?? [];
  if (decimals === "" || whole.startsWith("0") || whole.length > 3) return;
  const problem = `the comma in ${found} may mark decimals or thousands`;
  const understood = [`${whole}.${decimals}`, `${whole}${decimals}`].map((plain) =>
    instead(spot, found, plain),
  );
  fail({ text: spot.text, at: spot.at + whole.length }, { code: "DECIMAL_COMMA", problem, understood });
}

const noFractionTwice = "a fraction follows a number that has a fraction or decimals already";
const trails = [
  { trail: /^ *\//, code: "BAD_FRACTION", problem: "a fraction is two whole numbers and one stroke" },
  { trail: /^,/, code: "DECIMAL_COMMA", problem: "a comma stands where no decimals can follow" },
  {
    trail: /^\.(?!\p{L})/u,
    code: "BAD_NUMBER",
    problem: "a decimal point stands where no decimals can follow",
  },
  {
    trail: /^[eE][+-]?\d/,
    code: "BAD_NUMBER",
    problem: "powers of ten are not read, only the number written out",
  },
  { trail: new RegExp(`^[ -]*[${vulgarCharacters}]`), code: "BAD_FRACTION", problem: noFractionTwice },
  { trail: /^ +\d+ *\/ *\d/, code: "BAD_FRACTION", problem: noFractionTwice },
] as const;

/** What may not follow a number directly. */
export function refuseTrail({ text, at }: Spot, end: number): void {
  const rest = text.slice(end);
  const number = text.slice(at, end);
  for (const { trail, code, problem } of trails) {
    if (!trail.test(rest)) continue;
    const bareMark = /^[.,](?!\d)/.test(rest);
    const understood = bareMark
      ? [instead({ text, at }, `${number}.`, number)]
      : ["9/16 in", "1 1/8 in", "1.125 in"];
    fail(
      { text, at: end },
      { code, problem, understood: code === "BAD_FRACTION" || bareMark ? understood : [] },
    );
  }
}
