import { rollRateOfWheelRate } from "../bar/rate";
import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity as g } from "../quantity/unit-table/unit";
import { finite, notNegative, positive, written } from "../spring/guard";

/** One axle as roll sees it. SI throughout; heights above the ground. */
export interface RollAxle {
  readonly track: number;
  /** Mass on this axle's two wheels, all of it. */
  readonly mass: number;
  /** Part of it that is not sprung: wheels, brakes, uprights, half the links; a live axle whole. */
  readonly unsprungMass: number;
  /** Height of the unsprung mass, usually the loaded radius. */
  readonly unsprungHeight: number;
  /** Height of the roll centre at rest; may be below ground. */
  readonly rollCentreHeight: number;
  /** Rate of one spring at its wheel; for a live axle, of one spring at the axle. */
  readonly springWheelRate: number;
  /** Distance between the springs of a live axle. Left out: independent, the springs act at the track. */
  readonly springBase?: number | undefined;
  /** Antisymmetric rate of the anti-roll bar at the wheel; 0 without a bar. */
  readonly barWheelRate: number;
  /** Vertical rate of one tyre. Left out: rigid. */
  readonly tyreRate?: number | undefined;
}

/** A car as roll sees it: two axles and the height of the whole car's centre of gravity, m. */
export interface RollCar {
  readonly front: RollAxle;
  readonly rear: RollAxle;
  readonly cgHeight: number;
}

export const axleNames = ["front", "rear"] as const;
export type AxleName = (typeof axleNames)[number];

/** Roll rates of one axle between body and wheels, N·m/rad. */
export interface AxleRollRate {
  readonly springs: number;
  readonly bar: number;
  readonly total: number;
  /** Share of the bar in the total, 0 to 1. */
  readonly barShare: number;
}

type AxleStiffness = Pick<RollAxle, "track" | "springWheelRate" | "springBase" | "barWheelRate">;

/**
 * Roll rates of an axle: springs k·s²/2 over the spring base s (the track where independent), bar k·t²/2 over the track.
 * @throws CalcRefusal unless track and spring rate are positive and the bar's rate not negative
 */
export function axleRollRate({
  track,
  springWheelRate,
  springBase,
  barWheelRate,
}: AxleStiffness): AxleRollRate {
  const base = springBase === undefined ? track : positive(springBase, "springBase");
  const springs = rollRateOfWheelRate(positive(springWheelRate, "springWheelRate"), base);
  const bar = rollRateOfWheelRate(barWheelRate, track);
  return { springs, bar, total: springs + bar, barShare: bar / (springs + bar) };
}

/** What the equations of roll need of an axle. */
export interface AxleFigures {
  readonly track: number;
  readonly weight: number;
  readonly sprungMass: number;
  readonly rollRate: AxleRollRate;
  /** Sprung mass × roll-centre height, kg·m: geometric moment per lateral acceleration. */
  readonly geometric: number;
  /** Unsprung mass × its height, kg·m. */
  readonly unsprung: number;
  /** Roll of the axle on its tyres per moment, rad/(N·m), its own weight's tipping included; 0 on rigid tyres. */
  readonly tyreCompliance: number;
  /** Moment by which the axle's load tips further, per roll on its tyres, N·m/rad. */
  readonly tipping: number;
}

/** Figures of one axle. @throws CalcRefusal naming the input ("front.track") that is no good */
export function axleFigures(car: RollCar, name: AxleName): AxleFigures {
  const axle = car[name];
  const at = (place: keyof RollAxle): string => `${name}.${place}`;
  positive(axle.track, at("track"));
  positive(axle.mass, at("mass"));
  notNegative(axle.unsprungMass, at("unsprungMass"));
  notNegative(axle.unsprungHeight, at("unsprungHeight"));
  finite(axle.rollCentreHeight, at("rollCentreHeight"));
  const sprungMass = axle.mass - axle.unsprungMass;
  if (sprungMass <= 0) throw nothingSprung(axle, at("unsprungMass"));
  const geometric = sprungMass * axle.rollCentreHeight;
  const unsprung = axle.unsprungMass * axle.unsprungHeight;
  const tipping = g * (geometric + unsprung);
  return {
    track: axle.track,
    weight: axle.mass * g,
    sprungMass,
    rollRate: axleRollRate(axle),
    geometric,
    unsprung,
    tyreCompliance: tyreCompliance(axle, { tipping, place: at("tyreRate") }),
    tipping,
  };
}

function nothingSprung({ mass, unsprungMass }: RollAxle, place: string): CalcRefusal {
  const [part, whole] = [written(unsprungMass, "mass"), written(mass, "mass")];
  return new CalcRefusal(
    "NOTHING_SPRUNG",
    `unsprung mass ${part} must be less than the axle's ${whole}`,
    place,
  );
}

function tyreCompliance(
  { tyreRate, track }: RollAxle,
  { tipping, place }: { tipping: number; place: string },
): number {
  if (tyreRate === undefined) return 0;
  const rate = rollRateOfWheelRate(positive(tyreRate, place), track) - tipping;
  if (rate > 0) return 1 / rate;
  throw new CalcRefusal(
    "TYRES_TOO_SOFT",
    `tyres of ${written(tyreRate, "rate")} cannot hold the axle upright`,
    place,
  );
}

/** The sprung mass of a car and its lever above the roll axis. */
export interface SprungBody {
  readonly mass: number;
  readonly cgHeight: number;
  /** Height of the roll axis under the sprung centre of gravity: the roll centres weighted by sprung mass. */
  readonly rollAxisHeight: number;
  /** Centre of gravity above the roll axis, measured vertically; negative when it hangs below. */
  readonly lever: number;
}

/** Sprung body from the axles' figures. @throws CalcRefusal when the unsprung masses leave it below ground */
export function sprungBody(car: RollCar, { front, rear }: Record<AxleName, AxleFigures>): SprungBody {
  const whole = (car.front.mass + car.rear.mass) * positive(car.cgHeight, "cgHeight");
  const mass = front.sprungMass + rear.sprungMass;
  const cgHeight = (whole - front.unsprung - rear.unsprung) / mass;
  if (cgHeight <= 0)
    throw new CalcRefusal(
      "CG_TOO_LOW",
      `centre of gravity ${written(car.cgHeight, "length")} high cannot be with unsprung parts as high and heavy as given`,
      "cgHeight",
    );
  const rollAxisHeight = (front.geometric + rear.geometric) / mass;
  return { mass, cgHeight, rollAxisHeight, lever: cgHeight - rollAxisHeight };
}
