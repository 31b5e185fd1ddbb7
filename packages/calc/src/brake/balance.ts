import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity } from "../quantity/unit-table/unit";
import { notNegative, positive } from "../spring/guard";
import { share } from "./guard";

/** What braking needs to know of a car, at rest on the level with its load. */
export interface BrakedCar {
  /** On the front wheels, kg. */
  readonly frontMass: number;
  /** On the rear wheels, kg. */
  readonly rearMass: number;
  /** m. */
  readonly wheelbase: number;
  /** Height of the centre of gravity, m. */
  readonly cgHeight: number;
}

/** One figure for each axle. */
export interface Axles {
  readonly front: number;
  readonly rear: number;
}

/**
 * Loads on the axles in steady braking, N. `deceleration` is z, in g. The rigid car: pitch, aerodynamic forces and
 * wheel inertia are left out.
 * @throws CalcRefusal (`REAR_LIFTS`) when the rear wheels would leave the ground
 */
export function axleLoadsUnderBraking(car: BrakedCar, deceleration: number): Axles {
  const { frontMass, rearMass, wheelbase, cgHeight } = checkedCar(car);
  const mass = frontMass + rearMass;
  const transfer = (mass * notNegative(deceleration, "deceleration") * cgHeight) / wheelbase;
  if (transfer > rearMass)
    throw new CalcRefusal(
      "REAR_LIFTS",
      `at ${deceleration} g the rear wheels leave the ground; they do so at ${(rearMass * wheelbase) / (mass * cgHeight)} g`,
      "deceleration",
    );
  return { front: (frontMass + transfer) * standardGravity, rear: (rearMass - transfer) * standardGravity };
}

/**
 * Share of the braking that the front axle must do for both to use the same adhesion: (b + z·h)/L, its share of the
 * load (Limpert, Brake Design and Safety; Gillespie ch. 3).
 * @param deceleration z, in g
 */
export function idealFrontShare(car: BrakedCar, deceleration: number): number {
  const { front, rear } = axleLoadsUnderBraking(car, deceleration);
  return front / (front + rear);
}

/** Brake forces on the ideal curve as shares of the car's weight; they add up to z. */
export function idealForceShares(car: BrakedCar, deceleration: number): Axles {
  const front = deceleration * idealFrontShare(car, deceleration);
  return { front, rear: deceleration - front };
}

/**
 * Deceleration, g, at which a fixed front share meets the ideal curve: below it the front locks first, above it the
 * rear. Zero or less: the rear always locks first.
 * @param frontShare β, share of the brake force at the front
 */
export function criticalDeceleration(car: BrakedCar, frontShare: number): number {
  const { frontMass, rearMass, wheelbase, cgHeight } = checkedCar(car);
  const loadShare = frontMass / (frontMass + rearMass);
  return ((share(frontShare, "frontShare") - loadShare) * wheelbase) / cgHeight;
}

/** Which axle locks first, and at what deceleration (g). `together` within a millionth. */
export interface FirstLock {
  readonly axle: "front" | "rear" | "together";
  readonly deceleration: number;
}

/**
 * Deceleration reached when the first axle uses all of the adhesion, for a fixed front share. The axle that first
 * reaches the adhesion given is the one that locks.
 * @param adhesion k, tyre on road, both axles alike
 */
export function firstLock(car: BrakedCar, frontShare: number, adhesion: number): FirstLock {
  const { frontMass, rearMass, wheelbase, cgHeight } = checkedCar(car);
  const k = positive(adhesion, "adhesion");
  const mass = frontMass + rearMass;
  const perWheelbase = (k * cgHeight) / wheelbase;
  const at = (load: number, room: number) =>
    room > 0 ? (k * load) / (mass * room) : Number.POSITIVE_INFINITY;
  const front = at(frontMass, share(frontShare, "frontShare") - perWheelbase);
  const rear = at(rearMass, 1 - frontShare + perWheelbase);
  const deceleration = Math.min(front, rear);
  if (Math.abs(front - rear) <= 1e-6 * deceleration) return { axle: "together", deceleration };
  return { axle: front < rear ? "front" : "rear", deceleration };
}

/**
 * Adhesion that each axle uses: brake force over its load at that deceleration.
 * @param forces brake force of each axle, N
 */
export function adhesionUsed(car: BrakedCar, forces: Axles): Axles {
  const weight = (car.frontMass + car.rearMass) * standardGravity;
  const loads = axleLoadsUnderBraking(car, (forces.front + forces.rear) / positive(weight, "mass"));
  return { front: forces.front / loads.front, rear: loads.rear > 0 ? forces.rear / loads.rear : 0 };
}

/** @throws CalcRefusal unless every figure is finite and greater than zero */
export function checkedCar(car: BrakedCar): BrakedCar {
  positive(car.frontMass, "frontMass");
  positive(car.rearMass, "rearMass");
  positive(car.wheelbase, "wheelbase");
  positive(car.cgHeight, "cgHeight");
  return car;
}
