import { finite, notNegative, positive } from "../spring/guard";
import { servoGain, share } from "./guard";

/** Area of a piston or bore from its diameter, m². */
export function pistonArea(diameter: number): number {
  return (Math.PI * positive(diameter, "diameter") ** 2) / 4;
}

/** A servo: gain as long as it can help, then a constant help. The trade calls the knee the run-out point. */
export interface Servo {
  /** Output over input below the knee, 1 or more. */
  readonly gain: number;
  /** Most it can add, in the unit of what it acts on (N at the push rod, Pa in the line). */
  readonly assistLimit: number;
}

/**
 * Output of a servo, in the unit of the input: gain × input until the help reaches its limit, input + limit beyond.
 * With the engine stopped and the reservoir empty it is the input itself.
 * @throws CalcRefusal for a negative input or limit, or a gain below 1
 */
export function servoOutput(input: number, { gain, assistLimit }: Servo): number {
  const boosted = servoGain(gain, "gain") * notNegative(input, "input");
  return Math.min(boosted, input + notNegative(assistLimit, "assistLimit"));
}

/** Input that makes a servo give an output; the inverse of {@link servoOutput}. */
export function servoInput(output: number, { gain, assistLimit }: Servo): number {
  const below = notNegative(output, "output") / servoGain(gain, "gain");
  return Math.max(below, output - notNegative(assistLimit, "assistLimit"));
}

/**
 * Most force a vacuum servo adds at the push rod, N: diaphragm area × depression. The push rod's own area is left out.
 * @param diaphragmDiameter effective diameter, m; makers quote the shell, of which the diaphragm is nine tenths or so
 * @param depression below the atmosphere, Pa
 */
export function vacuumAssist(diaphragmDiameter: number, depression: number): number {
  return pistonArea(diaphragmDiameter) * notNegative(depression, "depression");
}

/** Foot to line. */
export interface LineInput {
  /** N. */
  readonly pedalForce: number;
  /** Pedal to push-rod lever ratio. */
  readonly pedalRatio: number;
  /** m. */
  readonly masterBore: number;
  /** At the push rod, in N; a remote servo is put here by its pressure limit × the master cylinder's area. */
  readonly servo?: Servo | undefined;
}

/**
 * Line pressure, Pa: pedal force × ratio (boosted) ÷ area of the master cylinder. Return springs and seal friction
 * are left out. A tandem cylinder has this pressure in both circuits.
 * @example linePressure({ pedalForce: 450, pedalRatio: 5, masterBore: 0.01905 }) // => 7.894e6
 */
export function linePressure({ pedalForce, pedalRatio, masterBore, servo }: LineInput): number {
  const rod = notNegative(pedalForce, "pedalForce") * positive(pedalRatio, "pedalRatio");
  return (servo === undefined ? rod : servoOutput(rod, servo)) / pistonArea(masterBore);
}

/** A valve between front and rear: the rear pressure follows the front one up to the cut-in, then by the slope. */
export interface RearValve {
  /** Pa. */
  readonly cutIn: number;
  /** Rear over front beyond the cut-in: 0 for a limiting valve, between 0 and 1 for a reducing one. */
  readonly slope: number;
}

/**
 * Pressure behind a rear valve, Pa.
 * @throws CalcRefusal for a negative pressure or cut-in, or a slope outside 0 to 1
 */
export function valveOutput(pressure: number, { cutIn, slope }: RearValve): number {
  const knee = notNegative(cutIn, "cutIn");
  const over = Math.max(0, notNegative(pressure, "pressure") - knee);
  return Math.min(pressure, knee) + share(slope, "slope") * over;
}

/**
 * Pedal travel for a pad or shoe movement, m: fluid taken by all cylinders ÷ master cylinder area × pedal ratio.
 * @param cylinderArea all wheel cylinders together, m²; a sliding caliper's piston counts twice, for both its pads
 * @param padMovement of each pad or shoe tip, m
 */
export function pedalTravel(
  { pedalRatio, masterBore }: Pick<LineInput, "pedalRatio" | "masterBore">,
  { cylinderArea, padMovement }: { readonly cylinderArea: number; readonly padMovement: number },
): number {
  const fluid = notNegative(cylinderArea, "cylinderArea") * notNegative(padMovement, "padMovement");
  return (finite(fluid, "cylinderArea") / pistonArea(masterBore)) * positive(pedalRatio, "pedalRatio");
}
