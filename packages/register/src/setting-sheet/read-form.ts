import { printQuantity } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { QuantityCharacteristic, Side } from "../characteristic/characteristic";
import type { FieldProblem } from "../refusal/invalid";
import type { State } from "../state/state";
import { readEntered } from "../submission/read-field";
import type { UnitSystem } from "../value/print";

/** One cell of a setting sheet's form, as typed: as found before anything was moved, and as left. */
export interface SheetCell {
  readonly characteristic: string;
  readonly side: Side;
  readonly asFound: string;
  readonly asLeft: string;
  /** Id of the instrument it was read with; empty where none is named. */
  readonly instrument: string;
}

/** One reading taken out of a cell; repeats count from 1. */
export interface SheetCellReading {
  readonly characteristic: string;
  readonly side: Side;
  readonly repeat: number;
  readonly entered: string;
  readonly instrument: string;
}

/** What a form says: one occasion as found, one as left, and everything that is wrong with it, by field. */
export interface SheetFormReading {
  readonly asFound: readonly SheetCellReading[];
  readonly asLeft: readonly SheetCellReading[];
  readonly problems: readonly FieldProblem[];
}

/** Most repeats of one reading on one occasion. */
export const sheetRepeatLimit = 20;

const moments = ["asFound", "asLeft"] as const;
export type SheetMoment = (typeof moments)[number];

/** Name of a cell's field in the form. */
export const sheetField = (characteristic: string, side: Side, moment: SheetMoment): string =>
  `${moment}-${characteristic.replaceAll(".", "-")}-${side}`;

/** Repeat readings of one cell: "-0°32'; -0°30'; -0°34'". */
export function repeatsIn(typed: string): readonly string[] {
  return typed
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}

/** What the cells of a sheet are read against. */
export interface SheetBasis {
  readonly book: CharacteristicBook;
  /** Units that a bare number is in. */
  readonly units: UnitSystem;
  /** The car's state, for the rims a toe distance may be measured at. */
  readonly rims: State;
}

interface ReadCell {
  readonly cell: SheetCell;
  readonly moment: SheetMoment;
  readonly characteristic: QuantityCharacteristic;
  readonly texts: readonly string[];
  readonly numbers: readonly number[];
  /** Coarsest step of its entries, SI. */
  readonly step: number;
}

function readCell(
  cell: SheetCell,
  moment: SheetMoment,
  { book, units, rims, problems }: SheetBasis & { readonly problems: FieldProblem[] },
): ReadCell | undefined {
  const texts = repeatsIn(cell[moment]);
  if (texts.length === 0) return undefined;
  const field = sheetField(cell.characteristic, cell.side, moment);
  const characteristic = book.find(cell.characteristic);
  if (characteristic?.kind !== "quantity" || !characteristic.setting) {
    problems.push({ field, message: `"${cell.characteristic}" is no setting that can be measured.` });
    return undefined;
  }
  if (texts.length > sheetRepeatLimit) {
    problems.push({
      field,
      message: `${characteristic.label}: ${texts.length} readings of one thing; at most ${sheetRepeatLimit} are kept.`,
    });
    return undefined;
  }
  const read = texts.map((text) => readEntered(characteristic, text, { units, rims }));
  const wrong = read.flatMap((one) => (one.ok ? [] : [one.problem.message]));
  const [first] = wrong;
  if (first !== undefined) {
    problems.push({ field, message: `${first}.` });
    return undefined;
  }
  const values = read.flatMap((one) => (one.ok && one.value.kind === "quantity" ? [one.value] : []));
  const step = Math.max(0, ...values.map(({ resolution }) => resolution));
  return { cell, moment, characteristic, texts, numbers: values.map(({ si }) => si), step };
}

/**
 * Readings of one thing on one occasion that lie further apart than a quarter of what is believable at all are not
 * repeats: one is a slip, or belongs to another corner.
 */
function apart({ characteristic, numbers, cell, moment }: ReadCell): FieldProblem | undefined {
  const { minimum, maximum, label, dimension, units } = characteristic;
  if (minimum === undefined || maximum === undefined || numbers.length < 2 || dimension === "text")
    return undefined;
  const spread = Math.max(...numbers) - Math.min(...numbers);
  if (spread <= (maximum - minimum) / 4) return undefined;
  const said = printQuantity(spread, { dimension, unit: units.metric });
  return {
    field: sheetField(cell.characteristic, cell.side, moment),
    message: `${label}: repeat readings lie ${said} apart; one of them is a slip, or belongs to another corner.`,
  };
}

const isTotal = (text: string) => /\btotal\b|\boverall\b/i.test(text);

/** A total toe is one figure of the axle: two that differ, or one beside a wheel's own that does not fit, contradict. */
function totalToe(cells: readonly ReadCell[]): readonly FieldProblem[] {
  return cells.flatMap((right) => {
    if (right.characteristic.notation !== "toe" || right.cell.side !== "right") return [];
    const left = cells.find(
      ({ cell, moment }) =>
        cell.characteristic === right.cell.characteristic && cell.side === "left" && moment === right.moment,
    );
    const [one, other] = [left?.texts.at(-1) ?? "", right.texts.at(-1) ?? ""];
    if (!isTotal(one) || !isTotal(other)) return [];
    const [a, b] = [left?.numbers.at(-1) ?? 0, right.numbers.at(-1) ?? 0];
    if (Math.abs(a - b) <= Math.max(left?.step ?? 0, right.step)) return [];
    const message = `${right.characteristic.label}: a total is one figure for the axle, but left says "${one}" and right "${other}"; write each wheel's own "per side", or one total.`;
    return [{ field: sheetField(right.cell.characteristic, "right", right.moment), message }];
  });
}

/** Corner weights of the same occasion: a wheel that carries four times what its neighbour does was misread. */
function lopsided(cells: readonly ReadCell[]): readonly FieldProblem[] {
  return cells.flatMap((right) => {
    const { cell, moment, characteristic } = right;
    if (characteristic.dimension !== "mass" || cell.side !== "right") return [];
    const left = cells.find(
      (one) =>
        one.cell.characteristic === cell.characteristic && one.cell.side === "left" && one.moment === moment,
    );
    const [a, b] = [left?.numbers.at(-1), right.numbers.at(-1)];
    if (a === undefined || b === undefined || Math.max(a, b) <= 4 * Math.min(a, b)) return [];
    const message = `${characteristic.label}: "${left?.texts.at(-1)}" left and "${right.texts.at(-1)}" right do not stand on one axle; look at the units.`;
    return [{ field: sheetField(cell.characteristic, "right", moment), message }];
  });
}

function readingsOf(cells: readonly ReadCell[], wanted: SheetMoment): readonly SheetCellReading[] {
  return cells.flatMap(({ cell, moment, texts }) =>
    moment === wanted
      ? texts.map((entered, index) => ({
          characteristic: cell.characteristic,
          side: cell.side,
          repeat: index + 1,
          entered,
          instrument: cell.instrument,
        }))
      : [],
  );
}

/**
 * Reads the cells of a setting sheet: each entry in the trade's notation, repeats between semicolons. Says everything
 * that is wrong at once, each at its field: notation, what cannot be believed, a toe distance without its rim, repeats
 * that are none, totals that contradict each other. A cell with a problem gives no reading.
 */
export function readSheetForm(cells: readonly SheetCell[], basis: SheetBasis): SheetFormReading {
  const problems: FieldProblem[] = [];
  const read = cells.flatMap((cell) =>
    moments.flatMap((moment) => readCell(cell, moment, { ...basis, problems }) ?? []),
  );
  problems.push(...read.flatMap((one) => apart(one) ?? []), ...totalToe(read), ...lopsided(read));
  const wrong = new Set(problems.map(({ field }) => field));
  const right = read.filter(
    ({ cell, moment }) => !wrong.has(sheetField(cell.characteristic, cell.side, moment)),
  );
  return { asFound: readingsOf(right, "asFound"), asLeft: readingsOf(right, "asLeft"), problems };
}
