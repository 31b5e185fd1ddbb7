import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity } from "../quantity/unit-table/unit";
import { notNegative, positive } from "../spring/guard";
import { type Axles, type BrakedCar, checkedCar } from "./balance";
import { share } from "./guard";
import { pistonArea, type RearValve, type Servo, servoInput, servoOutput, valveOutput } from "./hydraulic";

/** The brakes of one axle, both wheels together. */
export interface AxleBrakes {
  /** N·m per Pa of line pressure beyond the threshold, both wheels. */
  readonly torquePerPressure: number;
  /** Pa; 0 when left out. */
  readonly thresholdPressure?: number | undefined;
  /** Loaded rolling radius, m. */
  readonly tyreRadius: number;
}

/** Everything between the foot and the road. */
export interface BrakeSystem {
  readonly pedalRatio: number;
  /** At the push rod, N. */
  readonly servo?: Servo | undefined;
  /** Line pressure of each circuit per newton at the push rod, Pa/N. */
  readonly pressurePerForce: Axles;
  readonly valve?: RearValve | undefined;
  readonly front: AxleBrakes;
  readonly rear: AxleBrakes;
}

/** A single or tandem master cylinder: both circuits have the same pressure. Pa/N. */
export function tandemCylinder(bore: number): Axles {
  const perForce = 1 / pistonArea(bore);
  return { front: perForce, rear: perForce };
}

/** Two master cylinders behind a balance bar. Pa/N. */
export function balanceBar(
  bores: Axles,
  /** Share of the push-rod force on the front cylinder. */
  frontForceShare: number,
): Axles {
  const front = share(frontForceShare, "frontForceShare");
  return { front: front / pistonArea(bores.front), rear: (1 - front) / pistonArea(bores.rear) };
}

/** What a push-rod force does: pressures Pa, brake forces at the road N, both wheels of an axle together. */
export interface Braking {
  readonly pressure: Axles;
  readonly force: Axles;
}

/** Pressures and brake forces of a push-rod force, N, as long as no wheel locks. */
export function brakingAt(system: BrakeSystem, rodForce: number): Braking {
  const { pressurePerForce, valve, front, rear } = system;
  const before =
    notNegative(pressurePerForce.rear, "pressurePerForce.rear") * notNegative(rodForce, "rodForce");
  const pressure = {
    front: notNegative(pressurePerForce.front, "pressurePerForce.front") * rodForce,
    rear: valve === undefined ? before : valveOutput(before, valve),
  };
  return {
    pressure,
    force: { front: roadForce(front, pressure.front), rear: roadForce(rear, pressure.rear) },
  };
}

function roadForce(
  { torquePerPressure, thresholdPressure = 0, tyreRadius }: AxleBrakes,
  pressure: number,
): number {
  const working = Math.max(0, pressure - notNegative(thresholdPressure, "thresholdPressure"));
  return (notNegative(torquePerPressure, "torquePerPressure") * working) / positive(tyreRadius, "tyreRadius");
}

/** Push-rod force of a pedal force, N. */
export function rodForceOf({ pedalRatio, servo }: BrakeSystem, pedalForce: number): number {
  const rod = notNegative(pedalForce, "pedalForce") * positive(pedalRatio, "pedalRatio");
  return servo === undefined ? rod : servoOutput(rod, servo);
}

/** Pedal force of a push-rod force, N. */
export function pedalForceOf({ pedalRatio, servo }: BrakeSystem, rodForce: number): number {
  return (servo === undefined ? rodForce : servoInput(rodForce, servo)) / positive(pedalRatio, "pedalRatio");
}

/** The moment the first axle uses all of the adhesion. */
export interface LockPoint {
  readonly axle: "front" | "rear" | "together";
  readonly rodForce: number;
  readonly pedalForce: number;
  /** g. */
  readonly deceleration: number;
}

/**
 * Where the first axle reaches the adhesion given, with thresholds and valve: exact, as every force is piecewise
 * linear in the push-rod force. `undefined` when no axle ever does (a limited rear without front brakes).
 * @param adhesion k, both axles alike
 * @throws CalcRefusal (`REAR_LIFTS`) when unbraked rear wheels leave the ground first
 */
export function lockPoint(system: BrakeSystem, car: BrakedCar, adhesion: number): LockPoint | undefined {
  const { frontMass, rearMass, wheelbase, cgHeight } = checkedCar(car);
  const k = positive(adhesion, "adhesion");
  const transferPerForce = cgHeight / wheelbase;
  const excess = (rodForce: number): Axles => {
    const { front, rear } = brakingAt(system, rodForce).force;
    const transfer = (front + rear) * transferPerForce;
    return {
      front: front - k * (frontMass * standardGravity + transfer),
      rear: rear - k * (rearMass * standardGravity - transfer),
    };
  };
  const knots = knotsOf(system);
  const front = firstZero(knots, (rodForce) => excess(rodForce).front);
  const rear = firstZero(knots, (rodForce) => excess(rodForce).rear);
  const rodForce = Math.min(front, rear);
  if (rodForce === Number.POSITIVE_INFINITY) return undefined;
  const together = Math.abs(front - rear) <= 1e-6 * rodForce;
  const { force } = brakingAt(system, rodForce);
  const deceleration = (force.front + force.rear) / ((frontMass + rearMass) * standardGravity);
  if (rear <= front && force.rear === 0)
    throw new CalcRefusal(
      "REAR_LIFTS",
      `the rear wheels leave the ground at ${deceleration.toPrecision(4)} g, before a wheel locks`,
      "cgHeight",
    );
  return {
    axle: together ? "together" : front < rear ? "front" : "rear",
    rodForce,
    pedalForce: pedalForceOf(system, rodForce),
    deceleration,
  };
}

/** Push-rod forces at which a brake begins to work or the valve cuts in, ascending, from 0. */
function knotsOf({ pressurePerForce, valve, front, rear }: BrakeSystem): readonly number[] {
  const { cutIn = Number.POSITIVE_INFINITY, slope = 1 } = valve ?? {};
  const threshold = rear.thresholdPressure ?? 0;
  const rearStart = threshold <= cutIn ? threshold : cutIn + (threshold - cutIn) / slope;
  const knots = [
    (front.thresholdPressure ?? 0) / pressurePerForce.front,
    rearStart / pressurePerForce.rear,
    cutIn / pressurePerForce.rear,
  ];
  return [0, ...knots.filter((knot) => knot > 0 && Number.isFinite(knot)).sort((a, b) => a - b)];
}

/** First zero, rising from below, of a function that is linear between the knots and beyond the last; else infinity. */
function firstZero(knots: readonly number[], excess: (rodForce: number) => number): number {
  for (const [index, from] of knots.entries()) {
    const next = knots[index + 1];
    const to = next ?? 2 * from + 1;
    const [low, high] = [excess(from), excess(to)];
    // By sign, not by place: rounding at a knot must not let the zero slip between two pieces.
    const crosses = low <= 0 && (next === undefined ? high > low : high >= 0);
    if (crosses) return high === low ? from : from + ((to - from) * -low) / (high - low);
  }
  return Number.POSITIVE_INFINITY;
}

/** What a pedal force does to a car on a road. Decelerations in g. */
export interface BrakedStop extends Braking {
  readonly rodForce: number;
  /** Reached, or the greatest before a wheel locks, if that is less. */
  readonly deceleration: number;
  /** Would the pedal force lock a wheel on this road? */
  readonly locks: boolean;
  readonly lock: LockPoint | undefined;
  /** Share of the braking at the front, at that deceleration; `undefined` when nothing brakes yet. */
  readonly frontShare: number | undefined;
}

/** The stop a pedal force makes, limited where the first wheel locks. */
export function brakedStop(
  system: BrakeSystem,
  car: BrakedCar,
  { pedalForce, adhesion }: { readonly pedalForce: number; readonly adhesion: number },
): BrakedStop {
  const lock = lockPoint(system, car, adhesion);
  const applied = rodForceOf(system, pedalForce);
  const locks = lock !== undefined && applied >= lock.rodForce;
  const braking = brakingAt(system, applied);
  const { front, rear } = (locks ? brakingAt(system, lock.rodForce) : braking).force;
  const total = front + rear;
  const weight = (car.frontMass + car.rearMass) * standardGravity;
  return {
    ...braking,
    rodForce: applied,
    deceleration: total / weight,
    locks,
    lock,
    frontShare: total > 0 ? front / total : undefined,
  };
}
