import { compoundNamed, perLarger } from "./compound";
import type { Dimension } from "./dimension";
import { defaultUnit, fromSi, stepToSi, type Unit, unitNamed } from "./unit";

/** How a quantity is printed. */
export interface PrintOptions {
  readonly dimension: Dimension;
  /** A unit of the dimension or one of its compounds ("°'", "cwt qr lb", "ft in"); left out: the default one. */
  readonly unit?: string | undefined;
  /** Step the value is known to, in SI: decides the decimals, or the fraction. */
  readonly resolution?: number | undefined;
  /** Print vulgar fractions (halves to 128ths) instead of decimals. Needs a resolution. */
  readonly fractions?: boolean | undefined;
  /** Decimals in the unit, where the resolution shall not decide. */
  readonly decimals?: number | undefined;
}

/** Largest and smallest step that printing goes to: 12 decimals. */
const decimalLimit = 12;
const significantDigits = 4;

/**
 * Prints an SI value in a unit. With a resolution: as many decimals (or the vulgar fraction) as that step needs, so
 * that reading the text back gives the value within half a step. With neither resolution nor decimals: four
 * significant figures, without trailing zeros.
 *
 * @throws RangeError for a value that is not finite, or a unit the dimension does not have
 * @example printQuantity(0.0142875, { dimension: "length", unit: "in", resolution: 0.0015875, fractions: true }) // => "9/16 in"
 */
export function printQuantity(si: number, options: PrintOptions): string {
  const { dimension, resolution } = options;
  if (dimension === "text") throw new RangeError("a text is no quantity");
  if (!Number.isFinite(si)) throw new RangeError(`a finite value is wanted, not ${si}`);
  if (resolution !== undefined && !(resolution > 0 && Number.isFinite(resolution))) {
    throw new RangeError(`a resolution greater than zero is wanted, not ${resolution}`);
  }
  const compound = options.unit === undefined ? undefined : compoundNamed(dimension, options.unit);
  if (compound !== undefined) return printCompound(si, compound, options);
  const unit = options.unit === undefined ? defaultUnit(dimension) : unitNamed(dimension, options.unit);
  return withUnit(printNumber(fromSi(si, unit), unit, options), unit);
}

/** A number with the symbol of its unit, apart or tight. */
export function withUnit(number: string, { symbol, tight }: Unit): string {
  return tight ? `${number}${symbol}` : `${number} ${symbol}`;
}

function printNumber(value: number, unit: Unit, { resolution, fractions, decimals }: PrintOptions): string {
  if (decimals !== undefined) return fixed(value, decimals);
  if (resolution === undefined) return significant(value);
  const step = resolution / stepToSi(1, unit);
  return fractions === true ? vulgar(value, step) : fixed(value, decimalsFor(step));
}

/** Decimals whose step is at most the given one; the slack forgives the last bit of a conversion. */
function decimalsFor(step: number): number {
  return Math.min(decimalLimit, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
}

function fixed(value: number, decimals: number): string {
  if (Math.abs(value) >= 1e15) throw new RangeError(`${value} is too large to print`);
  const text = value.toFixed(decimals);
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}

function significant(value: number): string {
  if (value === 0) return "0";
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  const text = fixed(value, Math.min(100, Math.max(0, significantDigits - 1 - exponent)));
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** Finest vulgar fraction: 128ths. */
const finestPower = 7;

/** The power of two whose fraction is at most the step. */
function powerFor(step: number): number {
  return Math.max(0, Math.ceil(-Math.log2(step) - 1e-9));
}

/** Halves to 128ths, in lowest terms; where the step is finer than that, decimals. */
function vulgar(value: number, step: number): string {
  const power = powerFor(step);
  if (power > finestPower) return fixed(value, decimalsFor(step));
  let denominator = 2 ** power;
  let numerator = Math.round(Math.abs(value) * denominator);
  while (denominator > 1 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const sign = value < 0 && numerator > 0 ? "-" : "";
  const whole = Math.floor(numerator / denominator);
  if (denominator === 1) return `${sign}${whole}`;
  return `${sign}${whole > 0 ? `${whole} ` : ""}${numerator % denominator}/${denominator}`;
}

/** How finely the smallest part of a compound is counted: in parts of one over `scale`. */
interface CompoundStep {
  readonly scale: number;
  readonly print: (count: number) => string;
}

function compoundStep(smallest: Unit, { resolution, fractions, decimals }: PrintOptions): CompoundStep {
  const step = resolution === undefined ? 1 : resolution / stepToSi(1, smallest);
  const power = powerFor(step);
  if (fractions === true && decimals === undefined && power <= finestPower) {
    return { scale: 2 ** power, print: (count) => vulgar(count, step) };
  }
  const places = decimals ?? decimalsFor(step);
  return { scale: 10 ** places, print: (count) => fixed(count, places) };
}

/** Minutes and seconds of arc stand in two places, as the trade writes them: 1°06', so that 1°6' is not taken for 1°60'. */
function inTwoPlaces(text: string): string {
  return /^\d(?!\d)/.test(text) ? `0${text}` : text;
}

/** Rounds in the smallest part first, so that 59.9' carries into the degrees. */
function printCompound(si: number, parts: readonly Unit[], options: PrintOptions): string {
  const larger = parts.slice(0, -1);
  const [smallest = defaultUnit("angle")] = parts.slice(-1);
  const { scale, print } = compoundStep(smallest, options);
  let rest = Math.round((Math.abs(si) / stepToSi(1, smallest)) * scale);
  const sign = si < 0 && rest > 0 ? "-" : "";
  const arc = parts.every(({ tight }) => tight);
  const place = (text: string, index: number) => (arc && index > 0 ? inTwoPlaces(text) : text);
  const texts = larger.map((unit, index) => {
    const size = perLarger(unit, smallest) * scale;
    const count = Math.floor(rest / size);
    rest -= count * size;
    return withUnit(place(fixed(count, 0), index), unit);
  });
  texts.push(withUnit(place(print(rest / scale), larger.length), smallest));
  return `${sign}${texts.join(arc ? "" : " ")}`;
}
