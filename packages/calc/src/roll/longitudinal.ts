import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity as g } from "../quantity/unit-table/unit";
import { finite, positive, written } from "../spring/guard";

/** A car on its two axles; SI. */
export interface LongitudinalInput {
  readonly mass: number;
  readonly wheelbase: number;
  /** From the front axle back to the centre of gravity. */
  readonly cgFromFront: number;
  readonly cgHeight: number;
  /** Forward acceleration, m/s²; braking is negative. */
  readonly acceleration: number;
}

/** Axle loads, N, and what the acceleration moves from front to rear, N. */
export interface AxleLoads {
  readonly front: number;
  readonly rear: number;
  readonly transfer: number;
}

/**
 * Axle loads of a car on the level under steady acceleration or braking: m(g·b/l ∓ a·h/l). Springs, anti-dive and
 * the turning of the wheels left out.
 *
 * @throws CalcRefusal (`AXLE_LIFTS`) when an axle would leave the ground, and for a centre of gravity not between the axles
 */
export function longitudinalAxleLoads(input: LongitudinalInput): AxleLoads {
  const { mass, wheelbase, cgFromFront, cgHeight, acceleration } = input;
  for (const place of ["mass", "wheelbase", "cgFromFront", "cgHeight"] as const)
    positive(input[place], place);
  if (cgFromFront >= wheelbase) throw behind(input);
  const transfer = (mass * finite(acceleration, "acceleration") * cgHeight) / wheelbase;
  const front = (mass * g * (wheelbase - cgFromFront)) / wheelbase - transfer;
  const rear = mass * g - front;
  if (front >= 0 && rear >= 0) return { front, rear, transfer };
  const limit = front < 0 ? (g * (wheelbase - cgFromFront)) / cgHeight : (-g * cgFromFront) / cgHeight;
  const which = front < 0 ? "front" : "rear";
  throw new CalcRefusal(
    "AXLE_LIFTS",
    `the ${which} axle leaves the ground at ${written(limit, "acceleration")}`,
    "acceleration",
  );
}

function behind({ cgFromFront, wheelbase }: LongitudinalInput): CalcRefusal {
  const [at, base] = [written(cgFromFront, "length"), written(wheelbase, "length")];
  return new CalcRefusal(
    "CG_BEHIND_REAR",
    `centre of gravity ${at} behind the front axle must lie within the wheelbase of ${base}`,
    "cgFromFront",
  );
}
