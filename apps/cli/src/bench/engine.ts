import {
  type AsBuiltValue,
  builtInBook,
  type CarBasis,
  checksForCar,
  deviationsFromFactory,
  entriesFor,
  type Reading,
  type Specification,
  type SpecificationEntry,
  starterChecks,
  stateOn,
  type Value,
} from "@trunnion/register";
import { type BenchRow, medianMs } from "./row";

const source = { title: "bench", trust: "documented" } as const;
const day = "2026-11-25";

/** A plausible value of every quantity of the dictionary: the middle of what is believable. */
function middleValues(): readonly { readonly key: string; readonly value: Value; readonly sided: boolean }[] {
  return builtInBook.all.flatMap((one) => {
    if (one.kind !== "quantity" || one.minimum === undefined || one.maximum === undefined) return [];
    const si = (one.minimum + one.maximum) / 2;
    return [
      {
        key: one.key,
        sided: one.sided,
        value: { kind: "quantity", si, resolution: si / 100, entered: "bench" },
      },
    ];
  });
}

const values = middleValues();

const specification: Specification = {
  id: "bench",
  version: 1,
  entries: values.map(
    ({ key, value }, index): SpecificationEntry => ({
      id: `e${index}`,
      characteristic: key,
      side: "whole",
      nominal: value,
      alternatives: [],
      applicability: {},
      source,
    }),
  ),
};

/** A car that differs from its specification at every seventh characteristic. */
function carOf(serial: number) {
  const basis: CarBasis = { serial, options: [] };
  const asBuilt: AsBuiltValue[] = [];
  const readings: Reading[] = [];
  for (const [index, { key, value, sided }] of values.entries()) {
    if (value.kind !== "quantity") continue;
    const own = (index + serial) % 7 === 0 ? { ...value, si: value.si * 1.05 } : value;
    for (const side of sided ? (["left", "right"] as const) : (["whole"] as const)) {
      const id = `${serial}-${index}-${side}`;
      if (index % 2 === 0) asBuilt.push({ id, characteristic: key, side, value: own, source });
      else
        readings.push({ id, on: "2026-05-01", sequence: 1, characteristic: key, side, value: own, source });
    }
  }
  return { basis, asBuilt, modifications: [], readings };
}

type Car = ReturnType<typeof carOf>;

function assess(car: Car): number {
  const entries = entriesFor(specification, car.basis, builtInBook);
  const state = stateOn(day, { entries, ...car });
  return deviationsFromFactory(state, entries, builtInBook).length;
}

function inspect(car: Car): number {
  const entries = entriesFor(specification, car.basis, builtInBook);
  const state = stateOn(day, { entries, ...car });
  const deviations = deviationsFromFactory(state, entries, builtInBook);
  const view = { status: "inUse", basis: car.basis, state, deviations, eventDay: day };
  return checksForCar(starterChecks, view, builtInBook).length;
}

/** State, deviations and checks of one car, and how they grow with the number of cars. */
export async function engineBench(): Promise<readonly BenchRow[]> {
  const one = carOf(1);
  const per = async (cars: number) => {
    const fleet = Array.from({ length: cars }, (_, index) => carOf(index));
    return (await medianMs(3, () => fleet.reduce((sum, car) => sum + assess(car), 0))) / cars;
  };
  const small = await per(500);
  const large = await per(5_000);
  const recorded = one.asBuilt.length + one.readings.length;
  return [
    {
      group: "engine",
      name: `state and deviations of one car, ${recorded} values`,
      value: await medianMs(200, () => assess(one)),
      unit: "ms",
    },
    {
      group: "engine",
      name: "the same with its checks",
      value: await medianMs(200, () => inspect(one)),
      unit: "ms",
    },
    {
      group: "engine",
      name: "per car among 5,000, against among 500",
      value: large,
      unit: "ms",
      peer: { name: "among 500", value: small },
      ratio: small / large,
    },
  ];
}
