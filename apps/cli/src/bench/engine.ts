import {
  builtInBook,
  checksForCar,
  deviationsFromFactory,
  entriesFor,
  starterChecks,
  stateOn,
} from "@trunnion/register";
import { type Car, carOf, consider, day, modifiedCar, specification } from "./engine-car";
import { type BenchRow, medianMs } from "./row";

function assess(car: Car): number {
  const entries = entriesFor(specification, car.basis, builtInBook);
  const state = stateOn(day, { entries, ...car });
  return deviationsFromFactory(state, entries, builtInBook).length;
}

function inspect(car: Car): number {
  const entries = entriesFor(specification, car.basis, builtInBook);
  const state = stateOn(day, { entries, ...car });
  const deviations = deviationsFromFactory(state, entries, builtInBook);
  const view = { status: "inUse", basis: car.basis, state, deviations, eventDay: day, book: builtInBook };
  return checksForCar(starterChecks, view, builtInBook).length;
}

/**
 * Milliseconds of processor time per car, collecting garbage included, over a fleet made one by one, so that memory does
 * not grow with it. Not the clock's time: over a minute that measures what else the machine does.
 */
function perCar(cars: number): number {
  let told = 0;
  const start = process.cpuUsage();
  for (let serial = 0; serial < cars; serial++) told += consider(modifiedCar(serial));
  const { user, system } = process.cpuUsage(start);
  if (told === 0) throw new Error("nothing was worked out");
  return (user + system) / 1000 / cars;
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
  const changed = modifiedCar(1);
  perCar(1_000);
  const thousand = perCar(1_000);
  const hundredThousand = perCar(100_000);
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
    {
      group: "engine",
      name: "state, deviations and consequences of one car with 9 characteristics changed",
      value: await medianMs(200, () => consider(changed)),
      unit: "ms",
    },
    {
      group: "engine",
      name: "processor time of the same per car of 100,000, against of 1,000",
      value: hundredThousand,
      unit: "ms",
      peer: { name: "of 1,000", value: thousand },
      ratio: thousand / hundredThousand,
    },
  ];
}
