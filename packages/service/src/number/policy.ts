import type { NumberOutcome } from "@trunnion/db";
import {
  explainNumber,
  type NumberedCar,
  type NumberedSeries,
  numberText,
  outOfOrder,
  sayDay,
} from "@trunnion/register";

/** One thing that speaks for or against a car's claim to a number; `neither` is worth knowing all the same. */
export interface Argument {
  readonly weight: "for" | "against" | "neither";
  readonly text: string;
}

/** Share of a series' cars from which on a constant difference of commission and serial is taken as the works' way. */
const USUAL = 0.8;
/** Fewest cars to say so from. */
const ENOUGH = 10;

const commissionOf = (car: NumberedCar): number | undefined => {
  const text = car.numbers.find(({ kind }) => kind === "commission")?.number ?? "";
  return /^\d{1,9}$/.test(text) ? Number(text) : undefined;
};

/** The difference between commission number and serial that most cars of a series have; nothing where there is none. */
export function usualOffset(
  series: NumberedSeries,
  cars: readonly NumberedCar[],
): { readonly offset: number; readonly having: number; readonly of: number } | undefined {
  const counts = new Map<number, number>();
  let of = 0;
  for (const car of cars) {
    const reading = explainNumber(car.chassis, series.pattern);
    const commission = commissionOf(car);
    if (!reading.ok || commission === undefined || car.series !== series.slug) continue;
    of += 1;
    const offset = commission - reading.serial;
    counts.set(offset, (counts.get(offset) ?? 0) + 1);
  }
  const [offset, having] = [...counts].reduce((best, one) => (one[1] > best[1] ? one : best), [0, 0]);
  return of >= ENOUGH && having >= of * USUAL ? { offset, having, of } : undefined;
}

function byCommission(
  car: NumberedCar,
  series: NumberedSeries,
  all: readonly NumberedCar[],
): readonly Argument[] {
  const usual = usualOffset(series, all);
  const commission = commissionOf(car);
  const reading = explainNumber(car.chassis, series.pattern);
  if (!usual || commission === undefined || !reading.ok) return [];
  const serial = commission - usual.offset;
  const basis = `as in ${usual.having} of ${usual.of} cars of ${series.pattern.series}`;
  if (serial === reading.serial) {
    return [{ weight: "for", text: `Commission ${commission} goes with this number, ${basis}.` }];
  }
  const belongs =
    serial >= series.pattern.first && serial <= series.pattern.last
      ? ` would go with ${numberText(series.pattern, serial)}`
      : " goes with no number of the series";
  return [{ weight: "against", text: `Commission ${commission}${belongs}, ${basis}.` }];
}

function byDate(car: NumberedCar, series: NumberedSeries, all: readonly NumberedCar[]): readonly Argument[] {
  const { built } = car;
  const reading = explainNumber(car.chassis, series.pattern);
  if (!built) return [{ weight: "neither", text: "When it was built is not known." }];
  if (!reading.ok) return [];
  const others = all.flatMap((one) => {
    const read = explainNumber(one.chassis, series.pattern);
    const counted = one.series === series.slug && one.reference !== car.reference && read.ok && one.built;
    // Another claimant of the same number has no say in where the number lies.
    return counted && read.serial !== reading.serial
      ? [{ id: one.reference, serial: read.serial, ...counted }]
      : [];
  });
  const found = outOfOrder([...others, { id: car.reference, serial: reading.serial, ...built }]).find(
    ({ id }) => id === car.reference,
  );
  if (!found) return [{ weight: "for", text: `Built ${built.text}: in order with its neighbours.` }];
  const { from, to } = found.window;
  const says = [from && `not before ${sayDay(from)}`, to && `not after ${sayDay(to)}`]
    .filter(Boolean)
    .join(" and ");
  return [{ weight: "against", text: `Built ${built.text}; its neighbours say ${says}.` }];
}

/** What the register itself says for and against a car's claim to its chassis number. */
export function argumentsFor(
  car: NumberedCar,
  series: readonly NumberedSeries[],
  all: readonly NumberedCar[],
): readonly Argument[] {
  const own = series.find(({ slug }) => slug === car.series);
  if (!own) return [{ weight: "neither", text: "Its series is not settled." }];
  const reading = explainNumber(car.chassis, own.pattern);
  const fits: Argument = reading.ok
    ? { weight: "neither", text: `The number fits ${own.pattern.series}.` }
    : { weight: "against", text: `${reading.problem}.` };
  return [fits, ...byCommission(car, own, all), ...byDate(car, own, all)];
}

/** How a number then stands on a car. */
export function standingAfter(
  outcome: NumberOutcome,
  { isHolder, now }: { readonly isHolder: boolean; readonly now: "accepted" | "disputed" | "restamped" },
): "accepted" | "disputed" | "restamped" {
  if (outcome === "oneHolds") return isHolder ? "accepted" : now === "restamped" ? "restamped" : "disputed";
  if (outcome === "undecided") return now === "restamped" ? "restamped" : "disputed";
  return now === "restamped" ? "restamped" : "accepted";
}
