import { type DatedSerial, outOfOrder } from "../identity/build-order";
import { lookalikeKey } from "../identity/near-miss";
import { chassisKey, explainNumber } from "../identity/number";
import { adviseOnNumber } from "../identity/number-advice";
import { type BorneSpan, spanOverlap } from "../identity/span";
import type {
  BorneNumber,
  NumberClaimed,
  NumberDoesNotFit,
  NumberedCar,
  NumberedSeries,
  NumberFinding,
  NumberKind,
} from "./finding";

interface Bearing {
  readonly car: NumberedCar;
  readonly number: string;
  readonly spans: readonly BorneSpan[];
}

type Bearings = ReadonlyMap<string, readonly Bearing[]>;

/** Numbers that the works gave once and for all: two cars cannot bear one in turn. */
const forGood: ReadonlySet<NumberKind> = new Set(["chassis", "commission"]);

const borneBy = (car: NumberedCar): readonly BorneNumber[] => [
  { kind: "chassis", number: car.chassis, span: {} },
  ...car.numbers,
];

/** Who bears which number, by kind and key; each car once per number, with every span it bore it. */
function bearingsOf(cars: readonly NumberedCar[]): ReadonlyMap<NumberKind, Bearings> {
  const kinds = new Map<NumberKind, Map<string, Map<string, Bearing>>>();
  for (const car of cars) {
    for (const { kind, number, span } of borneBy(car)) {
      const key = chassisKey(number);
      if (key === "") continue;
      const ofKind = kinds.get(kind) ?? new Map<string, Map<string, Bearing>>();
      const ofKey = ofKind.get(key) ?? new Map<string, Bearing>();
      const known = ofKey.get(car.reference);
      ofKey.set(car.reference, {
        car,
        number: known?.number ?? number,
        spans: [...(known?.spans ?? []), span],
      });
      ofKind.set(key, ofKey);
      kinds.set(kind, ofKind);
    }
  }
  return new Map(
    [...kinds].map(([kind, keys]) => [kind, new Map([...keys].map(([key, of]) => [key, [...of.values()]]))]),
  );
}

function sureness(kind: NumberKind, bearings: readonly Bearing[]): "certain" | "possible" | "none" {
  if (forGood.has(kind)) return "certain";
  const overlaps = bearings.flatMap((one, index) =>
    bearings
      .slice(index + 1)
      .flatMap((other) => one.spans.flatMap((a) => other.spans.map((b) => spanOverlap(a, b)))),
  );
  if (overlaps.includes("certain")) return "certain";
  return overlaps.includes("possible") ? "possible" : "none";
}

function claimed(kinds: ReadonlyMap<NumberKind, Bearings>): readonly NumberClaimed[] {
  return [...kinds].flatMap(([numberKind, keys]) =>
    [...keys].flatMap(([numberKey, bearings]) => {
      const [first] = bearings;
      if (first === undefined || bearings.length < 2) return [];
      const sure = sureness(numberKind, bearings);
      if (sure === "none") return [];
      const cars = bearings.map(({ car }) => car);
      const found = { numberKind, number: first.number, numberKey, cars, sure };
      const basis = cars.map(({ reference }) => reference).join(", ");
      return [{ kind: "claimed" as const, key: `claimed ${numberKind} ${numberKey}`, basis, ...found }];
    }),
  );
}

function lookAlikes(
  kinds: ReadonlyMap<NumberKind, Bearings>,
  unfit: ReadonlySet<string>,
): readonly NumberFinding[] {
  return [...kinds].flatMap(([numberKind, keys]) => {
    const alike = new Map<string, string[]>();
    for (const key of keys.keys()) {
      // A chassis number that does not fit is told already, with who bears the one that is meant.
      if (numberKind === "chassis" && unfit.has(key)) continue;
      const folded = lookalikeKey(key);
      alike.set(folded, [...(alike.get(folded) ?? []), key]);
    }
    return [...alike.values()].flatMap((group) =>
      group.slice(1).flatMap((key): NumberFinding[] => {
        const [one, other] = [keys.get(group[0] ?? "")?.[0], keys.get(key)?.[0]];
        if (!one || !other || one.car.reference === other.car.reference) return [];
        return [
          {
            kind: "lookAlike",
            key: `lookAlike ${numberKind} ${group[0]} ${key}`,
            basis: `${one.car.reference}, ${other.car.reference}`,
            numberKind,
            numbers: [one.number, other.number],
            cars: [one.car, other.car],
          },
        ];
      }),
    );
  });
}

function doesNotFit(
  car: NumberedCar,
  series: readonly NumberedSeries[],
  chassis: Bearings,
): NumberDoesNotFit | undefined {
  const { fits, problem, proposals } = adviseOnNumber(car.chassis, series, car.series);
  const unsettled =
    car.series === undefined && fits.length > 0
      ? `${car.chassis} fits ${series.find(({ slug }) => slug === fits[0])?.pattern.series}, and the record names no series`
      : undefined;
  const said = problem ?? unsettled;
  if (said === undefined) return undefined;
  const heldBy = (number: string) =>
    (chassis.get(chassisKey(number)) ?? [])
      .map((bearing) => bearing.car.reference)
      .filter((reference) => reference !== car.reference);
  return {
    kind: "doesNotFit",
    key: `doesNotFit ${car.reference}`,
    basis: `${car.series ?? "no series"}: ${said}`,
    car,
    problem: said,
    proposals: proposals.map((one) => ({ ...one, heldBy: heldBy(one.number) })),
  };
}

function outsideSeries(car: NumberedCar, series: NumberedSeries): readonly NumberFinding[] {
  const { built } = car;
  if (!built || (built.latest >= series.builtFrom && built.earliest <= series.builtTo)) return [];
  return [
    {
      kind: "outsideSeries",
      key: `outsideSeries ${car.reference}`,
      basis: `${series.slug}: ${built.text}`,
      car,
      series,
      sure: built.precision === "circa" ? "likely" : "certain",
    },
  ];
}

function orderOf(series: NumberedSeries, cars: readonly NumberedCar[]): readonly NumberFinding[] {
  const byReference = new Map(cars.map((car) => [car.reference, car]));
  const dated = cars.flatMap((car): DatedSerial[] => {
    const reading = explainNumber(car.chassis, series.pattern);
    return car.built && reading.ok ? [{ id: car.reference, serial: reading.serial, ...car.built }] : [];
  });
  return outOfOrder(dated).flatMap((order): NumberFinding[] => {
    const car = byReference.get(order.id);
    if (!car) return [];
    const { from = "", to = "" } = order.window;
    const basis = `${car.built?.text} between ${from} and ${to}`;
    return [{ kind: "outOfOrder", key: `outOfOrder ${car.reference}`, basis, car, series, order }];
  });
}

/**
 * What is odd about a register's numbers: those that do not fit their series, those that several cars claim, those
 * that differ by letters taken for digits, and build dates outside their series or out of order with their serial.
 * Each is a question, not a verdict. Engines, bodies and marks may pass from car to car: only spans that overlap, or
 * may, are told.
 */
export function findNumberTrouble(
  cars: readonly NumberedCar[],
  series: readonly NumberedSeries[],
): readonly NumberFinding[] {
  const kinds = bearingsOf(cars);
  const chassis = kinds.get("chassis") ?? new Map();
  const unfit = cars.flatMap((car) => doesNotFit(car, series, chassis) ?? []);
  const unfitKeys = new Set(unfit.map(({ car }) => chassisKey(car.chassis)));
  const ofSeries = series.map((one) => ({ one, cars: cars.filter((car) => car.series === one.slug) }));
  return [
    ...unfit,
    ...claimed(kinds),
    ...lookAlikes(kinds, unfitKeys),
    ...ofSeries.flatMap(({ one, cars: own }) => own.flatMap((car) => outsideSeries(car, one))),
    ...ofSeries.flatMap(({ one, cars: own }) => orderOf(one, own)),
  ];
}
