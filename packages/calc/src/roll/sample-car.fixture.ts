import fc from "fast-check";
import { CalcRefusal } from "../catalogue/refusal";
import type { RollAxle, RollCar } from "./car";
import { rollGradient } from "./gradient";

/** A small sports car of some 800 kg with a bar at each end; for the tests. */
export const sampleCar: RollCar = {
  front: {
    track: 1.3,
    mass: 400,
    unsprungMass: 60,
    unsprungHeight: 0.29,
    rollCentreHeight: 0.05,
    springWheelRate: 15_000,
    barWheelRate: 8000,
  },
  rear: {
    track: 1.28,
    mass: 420,
    unsprungMass: 75,
    unsprungHeight: 0.29,
    rollCentreHeight: 0.12,
    springWheelRate: 17_000,
    barWheelRate: 3000,
  },
  cgHeight: 0.45,
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const tyres = fc.option(between(120_000, 300_000), { nil: undefined });

const axles: fc.Arbitrary<RollAxle> = fc.record({
  track: between(1.1, 1.7),
  mass: between(250, 700),
  unsprungMass: between(30, 90),
  unsprungHeight: between(0.25, 0.33),
  rollCentreHeight: between(-0.05, 0.3),
  springWheelRate: between(12_000, 50_000),
  springBase: fc.option(between(0.7, 1.1), { nil: undefined }),
  barWheelRate: between(0, 30_000),
  tyreRate: tyres,
});

/** Cars of which none rolls more than 23° per g: softer ones hardly stand, or fall over. */
export const cars: fc.Arbitrary<RollCar> = fc
  .record({ front: axles, rear: axles, cgHeight: between(0.35, 0.55) })
  .filter((car) => {
    try {
      return Math.abs(rollGradient(car).gradient) < 0.04;
    } catch (error) {
      if (error instanceof CalcRefusal && error.code === "FALLS_OVER") return false;
      throw error;
    }
  });
