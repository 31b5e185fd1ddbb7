import { evaluate } from "mathjs";
import { expect, test } from "vitest";
import { standardGravity } from "../quantity/unit-table/unit";
import { computations } from "./all";
import type { AnyComputation } from "./computation";
import { type RunStep, runComputation } from "./run";

/*
 * A working that says k = F/x must show a k, an F and an x of which that is true. So every formula that is one is put
 * to mathjs, with the figures of the steps before it.
 */

type Known = ReadonlyMap<string, number>;
const functions = [
  "atan2",
  "asin",
  "acos",
  "atan",
  "sin",
  "cos",
  "tan",
  "min",
  "max",
  "log10",
  "sqrt",
  "abs",
];
const superscripts: Readonly<Record<string, string>> = { "²": "^2", "³": "^3", "⁴": "^4" };
const plain: readonly (readonly [RegExp, string])[] = [
  [/−/g, "-"],
  [/ ?· ?/g, "*"],
  [/½/g, "(1/2)"],
  [/\^¼/g, "^(1/4)"],
  [/\[/g, "("],
  [/\]/g, ")"],
  [/log₁₀/g, "log10"],
  [/√(\d+)/g, "sqrt($1)"],
  [/√\(/g, "sqrt("],
  [/\|([^|]+)\|/g, "abs($1)"],
];
/** Letters, digits and marks that a symbol goes on with. */
const goesOn = /[\p{L}\p{M}\p{N}_*′]/u;

/** How the text begins, as [what is taken off it, how mathjs writes that]; `undefined` if it is no part of a formula. */
function beginning(text: string, known: Known): readonly [string, string] | undefined {
  const symbolIn = (from: string) =>
    [...known.keys()]
      .sort((a, b) => b.length - a.length)
      .find((name) => from.startsWith(name) && !goesOn.test(from.charAt(name.length).replace(/[²³⁴*]/, "")));
  const called = functions.find((name) => text.startsWith(`${name}(`) || text.startsWith(`${name} `));
  if (called !== undefined && text.startsWith(`${called}(`)) return [called, called];
  if (called !== undefined) {
    // "sin θ" is "sin(θ)".
    const bare = symbolIn(text.slice(called.length + 1));
    return bare === undefined ? undefined : [`${called} ${bare}`, `${called}((${known.get(bare)}))`];
  }
  const symbol = symbolIn(text);
  if (symbol !== undefined) return [symbol, `(${known.get(symbol)})`];
  const raised = superscripts[text.charAt(0)];
  if (raised !== undefined) return [text.charAt(0), raised];
  const other = /^(?:π|\d+(?:\.\d+)?|[-+*/^(), ])/.exec(text)?.[0];
  return other === undefined ? undefined : [other, other === "π" ? "(pi)" : other];
}

/** A formula as mathjs writes it, or `undefined` where it holds words or a symbol that is not known. */
function readable(formula: string, known: Known): string | undefined {
  let rest = plain.reduce((so, [from, to]) => so.replace(from, to), formula);
  let out = "";
  while (rest !== "") {
    const found = beginning(rest, known);
    if (found === undefined) return undefined;
    rest = rest.slice(found[0].length);
    out += found[1];
  }
  // A bare number is no formula.
  return /[a-z*/+^]|\) *-/.test(out) ? out : undefined;
}

/** A formula and what is said after it, parted at commas and semicolons that stand in no bracket. */
function parts(formula: string): string[] {
  let depth = 0;
  const found = [""];
  for (const letter of formula) {
    if (/[([]/.test(letter)) depth += 1;
    if (/[)\]]/.test(letter)) depth -= 1;
    if (depth === 0 && /[;,:]/.test(letter)) found.push("");
    else found[found.length - 1] += letter;
  }
  return found.map((part) => part.trim().replace(/ on .*$/, ""));
}

/** What a formula comes to, its own definitions ("…, s = √(C² − A²)") worked out first. */
function comesTo(formula: string, known: Known): number | undefined {
  const [main = "", ...rest] = parts(formula);
  // In other units than SI: not for this test.
  if (rest.some((part) => /\b(?:in|per) /.test(part))) return undefined;
  const scope = new Map(known);
  for (const part of rest) {
    const [, name, expression] = /^(\S+) = (.+)$/.exec(part) ?? [];
    const text = expression === undefined ? undefined : readable(expression, scope);
    if (name !== undefined && text !== undefined) scope.set(name, Number(evaluate(text)));
  }
  const text = readable(main, scope);
  return text === undefined ? undefined : Number(evaluate(text));
}

interface Checked {
  readonly place: string;
  readonly shown: number;
  readonly worked: number;
}

/** "Front: ", "After: Rear: ": a figure of one of several like objects, which its own formulas mean. */
const prefixOf = (label: string): string => /^(?:[A-Z]\w*: )+/.exec(label)?.[0] ?? "";

function check(computation: AnyComputation): Checked[] {
  const all = new Map<string, number>([["g", standardGravity]]);
  const own = new Map<string, Map<string, number>>();
  return runComputation(computation, computation.example).working.flatMap((step) => {
    const prefix = prefixOf(step.label);
    const like = own.get(prefix) ?? new Map<string, number>();
    own.set(prefix, like);
    const found = checkStep(step, new Map([...all, ...like]), computation.name);
    if (typeof step.value !== "number") return found;
    all.set(step.symbol, step.value);
    like.set(step.symbol, step.value);
    return found;
  });
}

function checkStep({ symbol, formula, value }: RunStep, known: Known, name: string): Checked[] {
  if (formula === undefined || typeof value !== "number") return [];
  const worked = comesTo(formula, known);
  return worked === undefined ? [] : [{ place: `${name}: ${symbol} = ${formula}`, shown: value, worked }];
}

const checked = computations.flatMap(check);
/** Formulas written with a rounded constant are right to its digits. */
const rounded = /0\.6745/;

test("every formula of a working that is one comes to the figure beside it (mathjs)", () => {
  const wrong = checked.filter(({ place, shown, worked }) => {
    const allowed = (rounded.test(place) ? 2e-5 : 1e-9) * Math.max(Math.abs(shown), 1e-6);
    return !(Math.abs(worked - shown) <= allowed);
  });
  expect(wrong).toEqual([]);
  // A formula that can no longer be read, or a figure that is no longer shown, would drop out unseen.
  expect(checked.length).toBeGreaterThanOrEqual(formulasRead);
});
const formulasRead = 235;

test("a figure of the working goes by its symbol, not by the name of the field it was given in", () => {
  const nameless = computations.flatMap((computation) => {
    const fields = Object.keys(computation.input.shape).filter((field) => field.length > 2);
    return runComputation(computation, computation.example)
      .working.filter(({ symbol, value }) => typeof value === "number" && fields.includes(symbol))
      .map(({ symbol }) => `${computation.name}: ${symbol}`);
  });
  expect(nameless).toEqual([]);
});
