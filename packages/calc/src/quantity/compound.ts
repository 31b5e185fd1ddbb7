import type { MeasuredDimension } from "./dimension";
import { defaultUnit, type Unit, unitNamed } from "./unit";

/**
 * Units that are written one after another, largest first: 0°12', 5 ft 6 in, 15 cwt 2 qr 7 lb.
 * The unit of such an entry is the list of the symbols used, e.g. "cwt qr".
 */
const chains: Readonly<Partial<Record<MeasuredDimension, readonly (readonly string[])[]>>> = {
  length: [["ft", "in"]],
  angle: [["°", "'", '"']],
  mass: [
    ["ton", "cwt", "qr", "lb", "oz"],
    ["st", "lb", "oz"],
  ],
  time: [["h", "min", "s"]],
  volume: [["gal", "pint", "fl oz"]],
};

/** True when `next` may follow `last` in one entry. */
export function mayFollow(dimension: MeasuredDimension, last: Unit, next: Unit): boolean {
  return (chains[dimension] ?? []).some((chain) => {
    const place = chain.indexOf(last.symbol);
    return place >= 0 && chain.indexOf(next.symbol) > place;
  });
}

/** The unit that a further part of a compound would most likely have. */
export function nextInChain(dimension: MeasuredDimension, last: Unit): Unit | undefined {
  for (const chain of chains[dimension] ?? []) {
    const next = chain[chain.indexOf(last.symbol) + 1];
    if (chain.includes(last.symbol) && next !== undefined) return unitNamed(dimension, next);
  }
  return undefined;
}

/** How many of the smaller unit make one of the larger; whole in every chain. */
export function perLarger(larger: Unit, smaller: Unit): number {
  return Math.round((larger.times * smaller.over) / (larger.over * smaller.times));
}

/** The symbol of a compound: "°'" for tight parts, "cwt qr" for spaced ones. */
export function compoundSymbol(parts: readonly Unit[]): string {
  return parts.map(({ symbol, tight }, index) => (tight || index === 0 ? symbol : ` ${symbol}`)).join("");
}

const named = new Map<string, readonly Unit[]>();
for (const [dimension, list] of Object.entries(chains) as [MeasuredDimension, string[][]][]) {
  for (const chain of list) for (const parts of subsets(chain)) register(dimension, parts);
}
function register(dimension: MeasuredDimension, symbols: readonly string[]): void {
  const parts = symbols.map((symbol) => unitNamed(dimension, symbol));
  named.set(`${dimension}:${compoundSymbol(parts)}`, parts);
  if (dimension === "angle") named.set(`${dimension}:${symbols.map(arcName).join(" ")}`, parts);
}
function arcName(symbol: string): string {
  return symbol === "°" ? "deg" : symbol === "'" ? "min" : "sec";
}
function subsets(chain: readonly string[]): string[][] {
  const all: string[][] = [[]];
  for (const symbol of chain) all.push(...all.map((part) => [...part, symbol]));
  return all.filter((part) => part.length > 1);
}

/**
 * The parts of a compound unit by its symbol, largest first ("°'", also "deg min"; "ft in"; "cwt qr lb");
 * `undefined` for a text that names none.
 */
export function compoundNamed(dimension: MeasuredDimension, text: string): readonly Unit[] | undefined {
  return named.get(`${dimension}:${text}`);
}

/** The compound units of a dimension, as {@link compoundNamed} reads them and printing takes them. */
export function compoundsOf(dimension: MeasuredDimension): readonly string[] {
  const prefix = `${dimension}:`;
  return [...named.keys()].filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));
}

/**
 * The symbol in which a quantity is shown: of the unit or compound named, else of the dimension's default unit.
 * @throws RangeError if the dimension has no such unit
 */
export function symbolNamed(dimension: MeasuredDimension, text?: string): string {
  if (text === undefined) return defaultUnit(dimension).symbol;
  const parts = compoundNamed(dimension, text);
  return parts === undefined ? unitNamed(dimension, text).symbol : compoundSymbol(parts);
}
