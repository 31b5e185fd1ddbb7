import { dimensions, type MeasuredDimension } from "./dimension";
import { geometryUnits } from "./unit-table/geometry";
import { mechanicsUnits } from "./unit-table/mechanics";
import { motionUnits } from "./unit-table/motion";
import type { Unit } from "./unit-table/unit";

export type { Unit } from "./unit-table/unit";

const table: Readonly<Record<MeasuredDimension, readonly [Unit, ...Unit[]]>> = {
  ...geometryUnits,
  ...mechanicsUnits,
  ...motionUnits,
};

/** The units of a dimension, the one shown by default first. Never empty. */
export function unitsOf(dimension: MeasuredDimension): readonly Unit[] {
  return table[dimension];
}

/** The unit a dimension is shown in where nothing else is asked for. */
export function defaultUnit(dimension: MeasuredDimension): Unit {
  return table[dimension][0];
}

/**
 * The SI value of a number entered in a unit.
 * @example toSi(9, unitNamed("length", "in")) // => 0.2286
 */
export function toSi(value: number, { times, over, offset }: Unit): number {
  return ((value + offset) * times) / over;
}

/** The number that, in this unit, stands for an SI value; the inverse of {@link toSi}. */
export function fromSi(si: number, { times, over, offset }: Unit): number {
  return (si * over) / times - offset;
}

/** The size in SI of a step of one unit; unlike {@link toSi} it knows no zero point. */
export function stepToSi(step: number, { times, over }: Unit): number {
  return (step * times) / over;
}

const separators = /(?<=\p{L})[\s·⋅•*×.-]+(?=[\p{L}°])/gu;
const powers: Readonly<Record<string, string>> = { "²": "2", "³": "3", "⁴": "4", "⁻": "-", "¹": "1" };

/** One spelling for all ways to write a unit: separators become one dot, `per` a stroke, ² a 2, brackets go. */
function spellingKey(text: string): string {
  return text
    .trim()
    .replace(/\s+per\s+/gi, "/")
    .replace(/\s*\/\s*/g, "/")
    .replace(/[²³⁴⁻¹]/g, (power) => powers[power] ?? power)
    .replace(/[()^]/g, "")
    .replace(/(?<=\p{L})\.$/u, "")
    .replace(separators, "·")
    .replace(/\s+/g, "");
}

interface Spellings {
  /** As printed: what the code itself names, many times over, without the work of folding the spelling. */
  readonly bySymbol: ReadonlyMap<string, Unit>;
  readonly exact: ReadonlyMap<string, Unit>;
  readonly anyCase: ReadonlyMap<string, Unit>;
}
const spellings = new Map<MeasuredDimension, Spellings>();

function spellingsOf(dimension: MeasuredDimension): Spellings {
  const known = spellings.get(dimension);
  if (known !== undefined) return known;
  const bySymbol = new Map(table[dimension].map((unit) => [unit.symbol, unit]));
  const exact = new Map<string, Unit>();
  const anyCase = new Map<string, Unit>();
  for (const unit of table[dimension]) {
    for (const spelling of [unit.symbol, ...unit.also]) {
      const key = spellingKey(spelling);
      if (!exact.has(key)) exact.set(key, unit);
      if (!unit.strictCase && !anyCase.has(key.toLowerCase())) anyCase.set(key.toLowerCase(), unit);
    }
  }
  const made = { bySymbol, exact, anyCase };
  spellings.set(dimension, made);
  return made;
}

/** The unit of a dimension that a text spells, in any capitals where that cannot mislead; `undefined` if none. */
export function findUnit(dimension: MeasuredDimension, text: string): Unit | undefined {
  return spellingsOf(dimension).bySymbol.get(text) ?? findByKey(dimension, spellingKey(text));
}

function findByKey(dimension: MeasuredDimension, key: string): Unit | undefined {
  const { exact, anyCase } = spellingsOf(dimension);
  return exact.get(key) ?? anyCase.get(key.toLowerCase());
}

/** The dimensions that have a unit of this spelling, in the order of {@link siUnits}; none for an empty text. */
export function dimensionsWith(text: string): readonly MeasuredDimension[] {
  const key = spellingKey(text);
  if (key === "") return [];
  return dimensions.filter((kind) => kind !== "text").filter((kind) => findByKey(kind, key) !== undefined);
}

/**
 * The unit of a dimension by its symbol or another spelling, for code that names units itself.
 * @throws RangeError if the dimension has no such unit
 */
export function unitNamed(dimension: MeasuredDimension, text: string): Unit {
  const found = findUnit(dimension, text);
  if (found !== undefined) return found;
  const symbols = table[dimension].map(({ symbol }) => symbol).join(", ");
  throw new RangeError(`"${text}" is no unit of ${dimension}: ${symbols}`);
}
