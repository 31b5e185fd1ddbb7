/** A car of a series with its serial and the days its build date allows (ISO, both included). */
export interface DatedSerial {
  readonly id: string;
  readonly serial: number;
  readonly earliest: string;
  readonly latest: string;
}

/** A car whose date and serial do not go with those of the others. */
export interface OutOfOrder {
  readonly id: string;
  /** `likely`: it disagrees with three or more that agree among themselves. `either`: with so few that any may be wrong. */
  readonly sure: "likely" | "either";
  /** Those it disagrees with, nearest serial first. */
  readonly against: readonly string[];
  /** Days that the others allow it by their own dates, the slack included; an end is left out where none bounds it. */
  readonly window: { readonly from?: string; readonly to?: string };
  /** Days between what its date allows and the nearest date of the worst disagreement, the slack not counted. */
  readonly days: number;
}

/**
 * Days by which a car may have been finished before one of a lower number without anybody wondering: works do not
 * finish cars strictly in the order they number them. Common practice, no source; a club that knows better judges so.
 */
export const buildOrderSlackDays = 62;

/** Disagreements from which on the one, and not the others, is likely wrong. */
const ENOUGH = 3;

interface Placed {
  readonly id: string;
  readonly serial: number;
  readonly first: number;
  readonly last: number;
}

const dayNumber = (iso: string) => Math.round(Date.parse(`${iso}T00:00:00Z`) / 86_400_000);
const isoOf = (day: number) => new Date(day * 86_400_000).toISOString().slice(0, 10);

/** Days by which the lower number was begun after the higher one was finished; negative when the order can hold. */
function excess(one: Placed, other: Placed): number {
  if (one.serial === other.serial) return Number.NEGATIVE_INFINITY;
  const [lower, higher] = one.serial < other.serial ? [one, other] : [other, one];
  return lower.first - higher.last;
}

function windowOf(car: Placed, others: readonly Placed[], slack: number): OutOfOrder["window"] {
  const before = others.filter(({ serial }) => serial < car.serial).map(({ first }) => first);
  const after = others.filter(({ serial }) => serial > car.serial).map(({ last }) => last);
  // A loop, not a spread: a series may have more cars than a call may have arguments.
  const from = before.reduce((most, day) => Math.max(most, day), Number.NEGATIVE_INFINITY) - slack;
  const to = after.reduce((least, day) => Math.min(least, day), Number.POSITIVE_INFINITY) + slack;
  return {
    ...(Number.isFinite(from) ? { from: isoOf(from) } : {}),
    ...(Number.isFinite(to) ? { to: isoOf(to) } : {}),
  };
}

function found(car: Placed, kept: readonly Placed[], all: readonly Placed[], slack: number): OutOfOrder {
  const disagreeing = all
    .filter((other) => other.id !== car.id && excess(car, other) > slack)
    .sort((a, b) => Math.abs(a.serial - car.serial) - Math.abs(b.serial - car.serial));
  return {
    id: car.id,
    sure: disagreeing.length >= ENOUGH ? "likely" : "either",
    against: disagreeing.map(({ id }) => id),
    window: windowOf(
      car,
      kept.filter(({ id }) => id !== car.id),
      slack,
    ),
    days: disagreeing.reduce((most, other) => Math.max(most, excess(car, other)), 0),
  };
}

/** Rising pairs for each falling one from which on a series counts as numbered in the order of building. */
const RISING = 2;

const placedOf = ({ id, serial, earliest, latest }: DatedSerial): Placed => ({
  id,
  serial,
  first: dayNumber(earliest),
  last: dayNumber(latest),
});

/** Whether dates rise with serials at all: twice as many pairs that surely rise as surely fall, doubt apart. */
function rises(all: readonly Placed[]): boolean {
  let [rising, falling] = [0, 0];
  for (const [index, lower] of all.entries()) {
    for (const higher of all.slice(index + 1)) {
      if (lower.serial === higher.serial) continue;
      if (lower.last < higher.first) rising += 1;
      else if (lower.first > higher.last) falling += 1;
    }
  }
  return rising >= RISING * falling;
}

/**
 * Cars whose build date is out of order with their serial. Two cars disagree when the lower number's earliest day lies
 * more than the slack after the higher number's latest. Whoever disagrees with most is taken out, until the rest
 * agree: what remains rises with the serial, up to the slack. A doubtful date disagrees with little, as it should.
 * Where dates do not rise with serials in the first place, as in a fleet numbered as it was bought, nothing is told.
 *
 * @param slack days; {@link buildOrderSlackDays} when left out
 */
export function outOfOrder(
  cars: readonly DatedSerial[],
  slack: number = buildOrderSlackDays,
): readonly OutOfOrder[] {
  const all = cars.map(placedOf).sort((a, b) => a.serial - b.serial);
  if (!rises(all)) return [];
  const disagreements = all.map((one) => all.filter((other) => excess(one, other) > slack).length);
  const out = new Set<number>();
  for (;;) {
    const worst = disagreements.reduce(
      (at, count, index) => (count > (disagreements[at] ?? 0) ? index : at),
      0,
    );
    const car = all[worst];
    if (car === undefined || (disagreements[worst] ?? 0) === 0) break;
    const alone = disagreements[worst] === 1;
    for (const [index, other] of all.entries()) {
      if (out.has(index) || index === worst || excess(car, other) <= slack) continue;
      disagreements[index] = (disagreements[index] ?? 0) - 1;
      // Two that only disagree with each other: neither is likelier wrong.
      if (alone) out.add(index);
    }
    disagreements[worst] = 0;
    out.add(worst);
  }
  const kept = all.filter((_, index) => !out.has(index));
  return [...out]
    .sort((a, b) => a - b)
    .flatMap((index) => {
      const car = all[index];
      return car === undefined ? [] : [found(car, kept, all, slack)];
    });
}
