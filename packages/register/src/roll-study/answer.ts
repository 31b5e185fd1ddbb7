import {
  type AxleName,
  CalcRefusal,
  liftAcceleration,
  naturalFrequency,
  type RollAxle,
  type RollCar,
  rollAt,
  rollGradient,
  standardGravity,
  wheelRate,
} from "@trunnion/calc";

/** An axle as somebody who chooses springs and bars sees it: SI, the spring at itself, the bar at the wheel. */
export interface StudyAxle extends Omit<RollAxle, "springWheelRate" | "springBase" | "tyreRate"> {
  readonly springRate: number;
  /** Spring compression per rise of the wheel. */
  readonly motionRatio: number;
}

/** A car to be compared with itself on other springs and bars. */
export interface StudyCar extends Readonly<Record<AxleName, StudyAxle>> {
  readonly cgHeight: number;
}

/** What is moved: springs at themselves and bars at the wheel, N/m; lateral acceleration, m/s². */
export interface StudySetting {
  readonly frontSpring: number;
  readonly rearSpring: number;
  readonly frontBar: number;
  readonly rearBar: number;
  readonly acceleration: number;
}

/** One car at one lateral acceleration. SI. */
export interface StudyAnswer {
  /** Roll out of the bend, rad. */
  readonly roll: number;
  /** Front axle's share of the load transfer. */
  readonly transferShare: number;
  /** Front axle's share of the roll rate between body and wheels. */
  readonly rateShare: number;
  /** Hz, of half of each axle's sprung mass on one spring; tyres rigid. */
  readonly frequency: Readonly<Record<AxleName, number>>;
  /** The wheel that first leaves the ground, and at how much; missing where none does up to 3 g. */
  readonly lift?: { readonly axle: AxleName; readonly acceleration: number };
}

/** An answer, or why there is none. */
export type StudyResult =
  | { readonly ok: true; readonly answer: StudyAnswer }
  | { readonly ok: false; readonly because: string };

/** The setting a car stands on now, at 0.6 g. */
export function settingNow(car: StudyCar): StudySetting {
  return {
    frontSpring: car.front.springRate,
    rearSpring: car.rear.springRate,
    frontBar: car.front.barWheelRate,
    rearBar: car.rear.barWheelRate,
    acceleration: 0.6 * standardGravity,
  };
}

function rollCarOf(car: StudyCar, setting: StudySetting): RollCar {
  const axle = (name: AxleName, spring: number, bar: number): RollAxle => {
    const { springRate: _s, motionRatio, ...rest } = car[name];
    return { ...rest, springWheelRate: wheelRate(spring, { motionRatio }), barWheelRate: bar };
  };
  return {
    front: axle("front", setting.frontSpring, setting.frontBar),
    rear: axle("rear", setting.rearSpring, setting.rearBar),
    cgHeight: car.cgHeight,
  };
}

/**
 * Roll, load transfer and ride of a car on other springs and bars, by the calculator's own functions: independent
 * suspension, fixed roll centres, rigid tyres, steady cornering. A bar takes no part in ride: both wheels rise alike.
 * What the calculator refuses (a wheel in the air, a car that falls over) is an answer in words.
 */
export function studyRoll(car: StudyCar, setting: StudySetting): StudyResult {
  try {
    const rolling = rollCarOf(car, setting);
    const state = rollAt(rolling, setting.acceleration);
    const gradient = rollGradient(rolling);
    const lift = liftAcceleration(rolling);
    const ride = (name: AxleName) => {
      const { mass, unsprungMass, springWheelRate } = rolling[name];
      return naturalFrequency(springWheelRate, (mass - unsprungMass) / 2);
    };
    return {
      ok: true,
      answer: {
        roll: Math.abs(state.angle),
        transferShare: state.frontTransferShare ?? gradient.frontTransferShare,
        rateShare: gradient.frontRollRateShare,
        frequency: { front: ride("front"), rear: ride("rear") },
        ...(lift === null ? {} : { lift }),
      },
    };
  } catch (error) {
    if (error instanceof CalcRefusal) return { ok: false, because: error.message };
    throw error;
  }
}

/** The setting with some of its bars left off. */
export function withoutBars(setting: StudySetting, fitting: "none" | "frontOnly" | "rearOnly"): StudySetting {
  return {
    ...setting,
    frontBar: fitting === "frontOnly" ? setting.frontBar : 0,
    rearBar: fitting === "rearOnly" ? setting.rearBar : 0,
  };
}

/**
 * Diameter of a bar of the same length, lever and material that gives another rate: stiffness goes with the fourth power
 * of a solid bar's diameter, in twist and in bending alike.
 */
export function diameterForRate(
  now: { readonly diameter: number; readonly rate: number },
  rate: number,
): number {
  return now.diameter * (rate / now.rate) ** 0.25;
}
