import { CalcRefusal } from "../catalogue/refusal";
import { combinedUncertainty } from "../measurement/uncertainty";
import { finite, notNegative, positive, written } from "../spring/guard";
import { type CornerMasses, cornerSums } from "./corner";

/** Where the wheels stand, m. */
export interface WheelPlan {
  readonly wheelbase: number;
  readonly frontTrack: number;
  readonly rearTrack: number;
}

/**
 * Centre of gravity in the plan, m: how far behind the front axle, and how far left of the centre plane (negative: to
 * the right). In ISO 8855 axes x is −behindFront and y is left.
 * @throws CalcRefusal unless the sizes are greater than zero and the corners weigh something
 */
export function centreInPlan(corners: CornerMasses, plan: WheelPlan): { behindFront: number; left: number } {
  const { total, rear } = cornerSums(corners);
  const front = ((corners.leftFront - corners.rightFront) * positive(plan.frontTrack, "frontTrack")) / 2;
  const back = ((corners.leftRear - corners.rightRear) * positive(plan.rearTrack, "rearTrack")) / 2;
  return {
    behindFront: (rear / total) * positive(plan.wheelbase, "wheelbase"),
    left: (front + back) / total,
  };
}

/** A car weighed level, and again with one axle on blocks. Masses kg, lengths m. */
export interface RaisedAxle {
  /** Level. */
  readonly frontMass: number;
  readonly rearMass: number;
  /** Level, on the ground. */
  readonly wheelbase: number;
  /** Loaded radii: height of the hubs above what the tyres stand on. */
  readonly frontRadius: number;
  readonly rearRadius: number;
  readonly raised: "front" | "rear";
  /** Height of the blocks under the raised wheels. */
  readonly lift: number;
  /** On the axle that stays down, while the other is raised. */
  readonly lowMass: number;
}

/** Height of the centre of gravity and what it came from. */
export interface CgHeight {
  /** Above the ground, car level, m. */
  readonly height: number;
  /** Above the line through the hubs, square to it, m. */
  readonly aboveHubs: number;
  /** How far the car was tilted, rad. */
  readonly tilt: number;
  /** Gain of the lower axle, kg. */
  readonly gain: number;
}

/**
 * Height of the centre of gravity from a raised axle, exact: the rigid car is tilted about its hubs, wheel radii
 * included, and every wheel stands under its own hub. With x the share of the mass on the rear axle times the
 * horizontal distance of the hubs, level and tilted: x = a·cos θ − c·sin θ, two equations for a and c.
 *
 * Suspension locked, brakes off, gearbox in neutral, tanks full or empty, tyres hard.
 * @throws CalcRefusal when a figure is not physical, the lift too high for the wheelbase, or the loads put the centre of
 * gravity below the ground
 */
export function cgHeight(weighing: RaisedAxle): CgHeight {
  const { frontRadius, rearRadius, lift, raised } = checkedWeighing(weighing);
  const total = weighing.frontMass + weighing.rearMass;
  const rise = rearRadius - frontRadius;
  const hubs = Math.hypot(weighing.wheelbase, rise);
  const level = Math.asin(rise / hubs);
  const tilted = Math.asin(withinReach((rise + (raised === "rear" ? lift : -lift)) / hubs, lift));
  const rearTilted = raised === "rear" ? total - weighing.lowMass : weighing.lowMass;
  const x0 = (weighing.rearMass / total) * weighing.wheelbase;
  const x1 = (rearTilted / total) * hubs * Math.cos(tilted);
  const turn = Math.sin(tilted - level);
  const along = (x0 * Math.sin(tilted) - x1 * Math.sin(level)) / turn;
  const above = (x0 * Math.cos(tilted) - x1 * Math.cos(level)) / turn;
  const height = frontRadius + along * Math.sin(level) + above * Math.cos(level);
  if (height <= 0)
    throw new CalcRefusal(
      "BELOW_GROUND",
      `these loads put the centre of gravity ${written(height, "length")} above the ground: check which axle was raised, and the scales`,
      "lowMass",
    );
  const lowLevel = raised === "rear" ? weighing.frontMass : weighing.rearMass;
  return { height, aboveHubs: above, tilt: Math.abs(tilted - level), gain: weighing.lowMass - lowLevel };
}

/** Standard uncertainties of a weighing. Left out: none is counted. */
export interface WeighingUncertainty {
  /** Of the gain of the lower axle, kg. */
  readonly gain?: number | undefined;
  /** m. */
  readonly lift?: number | undefined;
  readonly wheelbase?: number | undefined;
  /** Of either radius. */
  readonly radius?: number | undefined;
}

/**
 * Standard uncertainty of the height, m: the weighing's uncertainties through {@link cgHeight}, sensitivities by central
 * differences, root-sum-square (GUM 5.1).
 */
export function cgHeightUncertainty(weighing: RaisedAxle, u: WeighingUncertainty): number {
  const slope = (key: "lowMass" | "lift" | "wheelbase" | "frontRadius" | "rearRadius") => {
    const step = 1e-5 * weighing[key];
    const at = (value: number) => cgHeight({ ...weighing, [key]: value }).height;
    return (at(weighing[key] + step) - at(weighing[key] - step)) / (2 * step);
  };
  return combinedUncertainty([
    { standard: u.gain ?? 0, sensitivity: slope("lowMass") },
    { standard: u.lift ?? 0, sensitivity: slope("lift") },
    { standard: u.wheelbase ?? 0, sensitivity: slope("wheelbase") },
    { standard: u.radius ?? 0, sensitivity: slope("frontRadius") },
    { standard: u.radius ?? 0, sensitivity: slope("rearRadius") },
  ]);
}

/**
 * The shortcut others use for the height above the hubs, m: L²·Δm/(m·H), which is too high by 1/cos² of the tilt's
 * half and more. For comparison only.
 */
export function shortcutAboveHubs(
  { frontMass, rearMass, wheelbase, lift }: RaisedAxle,
  gain: number,
): number {
  return (wheelbase ** 2 * finite(gain, "gain")) / ((frontMass + rearMass) * positive(lift, "lift"));
}

function withinReach(sine: number, lift: number): number {
  if (Math.abs(sine) < 1) return sine;
  throw new CalcRefusal("TOO_HIGH", `a lift of ${written(lift, "length")} stands the car on end`, "lift");
}

function checkedWeighing(weighing: RaisedAxle): RaisedAxle {
  const sizes = ["frontMass", "rearMass", "wheelbase", "frontRadius", "rearRadius", "lift"] as const;
  for (const size of sizes) positive(weighing[size], size);
  const total = weighing.frontMass + weighing.rearMass;
  if (notNegative(weighing.lowMass, "lowMass") < total) return weighing;
  throw new CalcRefusal(
    "TOO_HEAVY",
    `the lower axle cannot carry ${written(weighing.lowMass, "mass")} of a car of ${written(total, "mass")}`,
    "lowMass",
  );
}
