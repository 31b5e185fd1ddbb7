import { findUnit, parseQuantity, printQuantity } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { Assembly, Characteristic, QuantityCharacteristic } from "../characteristic/characteristic";
import type { BracketModel } from "../sheet/sheet-model";
import type { Limits, Source } from "../specification/specification";
import { saySince } from "../state/since";
import type { Origin, StateValue } from "../state/state";
import { printValue } from "../value/print";
import type { Value } from "../value/value";
import { uncertaintyOf } from "./compare";
import type { Deviation, Verdict } from "./deviation";

/** A verdict in words, as every screen and sheet says it. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  outsideLimits: "outside limits",
  missing: "missing",
  added: "added",
  differentPart: "different part",
  cannotTell: "cannot tell",
  acceptedSubstitute: "accepted substitute",
  periodOption: "period option",
  insideLimits: "inside limits",
  asSpecified: "as specified",
  notRecorded: "not recorded",
};

/** A deviation ready to be read: every text made, nothing left to work out. */
export interface DeviationLine {
  readonly characteristic: string;
  readonly label: string;
  readonly assembly: Assembly;
  readonly side?: "left" | "right";
  readonly verdict: Verdict;
  readonly verdictText: string;
  /** What the baseline wants, with its limits. */
  readonly specified: string;
  /** What the car has, as entered (a choice by its label); empty where nothing is known of this car. */
  readonly actual: string;
  /** "+4 mm, × 1.25", or empty. */
  readonly difference: string;
  /** "12 Mar 1998", "1998": no sharper than the record; or empty. */
  readonly since: string;
  /** How the car's value is known; missing where nothing is. */
  readonly known?: { readonly origin: Origin; readonly source: Source; readonly since?: string };
  readonly bracket?: BracketModel;
}

type UnitSystem = "metric" | "imperial";

/** One minute of arc, in radians. */
const MINUTE = Math.PI / 180 / 60;

/** The unit a nominal was written in, so that its limits stand beside it in the same; else the club's. */
export function unitBeside(
  characteristic: QuantityCharacteristic,
  nominal: Value | undefined,
  system: UnitSystem,
): string {
  const { dimension, units } = characteristic;
  if (characteristic.notation === "toe") return units[system];
  if (nominal?.kind !== "quantity") return units[system];
  return parseQuantity(nominal.entered, dimension, { defaultUnit: units[system] }).unit;
}

/** Limits in words: "-1° to 0°", "at least 8 mm"; in the unit of the nominal where one is given. */
export function sayLimits(
  characteristic: Characteristic,
  limits: Limits,
  system: UnitSystem,
  nominal?: Value,
): string {
  const { lower, upper } = limits;
  if (characteristic.kind !== "quantity") return "";
  const { dimension } = characteristic;
  const unit = unitBeside(characteristic, nominal, system);
  // Degrees and minutes to the minute; everything else to four figures. Never to the nominal's own step: a limit of
  // half a degree beside a nominal of "0°" is not one of a degree.
  const resolution = unit === "°'" ? MINUTE : undefined;
  const said = (si: number) => withoutTrailingZeros(printQuantity(si, { dimension, unit, resolution }));
  if (lower !== undefined && upper !== undefined) return `${said(lower)} to ${said(upper)}`;
  if (lower !== undefined) return `at least ${said(lower)}`;
  return upper === undefined ? "" : `at most ${said(upper)}`;
}

/** As entered; a choice by its label, since "yes" or "front" says nothing beside another value. */
function shown(characteristic: Characteristic, value: Value): string {
  return printValue(characteristic, value, { system: value.kind === "choice" ? "metric" : "asEntered" });
}

function specifiedText(
  deviation: Deviation,
  characteristic: Characteristic | undefined,
  system: UnitSystem,
): string {
  if (!characteristic) return "";
  if (deviation.entry && "undecided" in deviation.entry) return "depends on build date or number, not known";
  const { nominal, limits } = deviation;
  const wanted = nominal === undefined ? "" : shown(characteristic, nominal);
  const between = limits === undefined ? "" : sayLimits(characteristic, limits, system, nominal);
  if (wanted === "" && between === "") return "not fitted";
  return wanted === "" || between === "" ? wanted + between : `${wanted} (${between})`;
}

/** Half the finer step of the two: a fraction in lowest terms hides how finely it is meant. */
function differenceStep(nominal: Value | undefined, actual: Value | undefined): number | undefined {
  const steps = [nominal, actual].flatMap((value) => (value?.kind === "quantity" ? [value.resolution] : []));
  return steps.length === 0 ? undefined : Math.min(...steps) / 2;
}

/** "+4.0 mm" is "+4 mm": the step was halved for what does not come out even. */
const withoutTrailingZeros = (printed: string) =>
  printed.replace(/(\.\d*?)0+(?!\d)/, "$1").replace(/\.(?!\d)/, "");

/**
 * The unit both were written in, so that 20 psi beside 22 psi is 2 psi less; else the club's. Lengths stay in the club's, since
 * the sixteenths of two fractions say little beside their size.
 */
function differenceUnit(
  { nominal, actual }: Deviation,
  one: QuantityCharacteristic,
  system: UnitSystem,
): string {
  const { dimension, units } = one;
  if (dimension === "angle") return "°'";
  if (dimension === "length" || dimension === "text" || one.notation === "toe") return units[system];
  const written = [nominal, actual?.value].map((value) =>
    value?.kind === "quantity"
      ? parseQuantity(value.entered, dimension, { defaultUnit: units[system] }).unit
      : "",
  );
  const [unit = "", other] = written;
  return unit === other && findUnit(dimension, unit) !== undefined ? unit : units[system];
}

function differenceText(
  deviation: Deviation,
  characteristic: Characteristic | undefined,
  system: UnitSystem,
): string {
  const { difference, ratio, nominal, actual } = deviation;
  if (difference === undefined || characteristic?.kind !== "quantity") return "";
  const { dimension } = characteristic;
  const unit = differenceUnit(deviation, characteristic, system);
  const resolution = differenceStep(nominal, actual?.value);
  const printed = withoutTrailingZeros(printQuantity(difference, { dimension, unit, resolution }));
  const signed = difference > 0 ? `+${printed}` : printed;
  const part = ratio === undefined || characteristic.setting ? "" : `, × ${ratio.toFixed(2)}`;
  return `${signed}${part}`;
}

function bracketOf(
  { limits, nominal, actual }: Deviation,
  characteristic: Characteristic | undefined,
): BracketModel | undefined {
  if (!limits) return undefined;
  const known =
    actual && actual.origin !== "specification" && actual.value.kind === "quantity" ? actual : undefined;
  const expandedUncertainty = known === undefined ? 0 : uncertaintyOf(known, characteristic);
  return {
    ...limits,
    ...(nominal?.kind === "quantity" ? { nominal: nominal.si } : {}),
    ...(known?.value.kind === "quantity" ? { value: known.value.si } : {}),
    ...(expandedUncertainty > 0 ? { expandedUncertainty } : {}),
  };
}

function knownOf(value: StateValue): NonNullable<DeviationLine["known"]> {
  const { origin, source } = value;
  const since = saySince(value);
  return { origin, source, ...(since === undefined ? {} : { since }) };
}

/** Words a deviation for people, in the club's units; values stay as they were entered. */
export function deviationLine(
  deviation: Deviation,
  book: CharacteristicBook,
  system: UnitSystem,
): DeviationLine {
  const characteristic = book.find(deviation.characteristic);
  const { actual, side, verdict } = deviation;
  const known = actual && actual.origin !== "specification" ? actual : undefined;
  const bracket = bracketOf(deviation, characteristic);
  return {
    characteristic: deviation.characteristic,
    label: characteristic?.label ?? deviation.characteristic,
    assembly: characteristic?.assembly ?? "chassis",
    ...(side === "whole" ? {} : { side }),
    verdict,
    verdictText: verdictWords[verdict],
    specified: specifiedText(deviation, characteristic, system),
    actual: known && characteristic ? shown(characteristic, known.value) : "",
    difference: known ? differenceText(deviation, characteristic, system) : "",
    since: (known && saySince(known)) ?? "",
    ...(known ? { known: knownOf(known) } : {}),
    ...(bracket ? { bracket } : {}),
  };
}
