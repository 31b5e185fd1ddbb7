import { CalcRefusal } from "../catalogue/refusal";
import { discTorquePerPressure, padRadius } from "./disc";
import { drumTorquePerPressure } from "./drum";
import type { AxleInput, SystemInput } from "./field";
import { pistonArea, type RearValve, type Servo } from "./hydraulic";
import { type AxleBrakes, type BrakeSystem, balanceBar, tandemCylinder } from "./system";

/** Area of the pistons of one side, m². */
export const pistonsArea = (diameters: readonly number[]): number =>
  diameters.reduce((sum, diameter) => sum + pistonArea(diameter), 0);

/** @throws CalcRefusal (`NOT_GIVEN`) */
function given(value: number | undefined, place: string, what: string): number {
  if (value !== undefined) return value;
  throw new CalcRefusal("NOT_GIVEN", `${place} is needed: ${what}`, place);
}

type RadiusInput = Pick<AxleInput, "effectiveRadius" | "discDiameter" | "padHeight">;

/**
 * Effective radius as given, or from disc and pad.
 * @throws CalcRefusal unless there is exactly one of the two
 */
export function effectiveRadiusOf(
  { effectiveRadius, discDiameter, padHeight }: RadiusInput,
  place = "",
): number {
  if (effectiveRadius === undefined) {
    const wanted = "or give the effective radius";
    const diameter = given(
      discDiameter,
      `${place}discDiameter`,
      `the disc's diameter, with the pad's height, ${wanted}`,
    );
    return padRadius(
      diameter / 2,
      given(padHeight, `${place}padHeight`, `the pad's radial height, ${wanted}`),
    );
  }
  if (discDiameter === undefined && padHeight === undefined) return effectiveRadius;
  throw new CalcRefusal(
    "TWO_RADII",
    "give either the effective radius or disc diameter and pad height, not both",
    `${place}effectiveRadius`,
  );
}

/** Torque per pressure of one wheel, N·m/Pa. */
export function wheelTorquePerPressure(axle: AxleInput, place: string): number {
  const area = pistonsArea(axle.pistonDiameters);
  if (axle.kind === "disc") {
    const friction = given(axle.friction, `${place}friction`, "the friction of the pads");
    return discTorquePerPressure({
      pistonArea: area,
      friction,
      effectiveRadius: effectiveRadiusOf(axle, place),
    });
  }
  const brakeFactor = given(axle.brakeFactor, `${place}brakeFactor`, "the brake factor of a drum brake");
  const diameter = given(axle.drumDiameter, `${place}drumDiameter`, "the drum's diameter");
  return drumTorquePerPressure({ pistonArea: area, brakeFactor, drumRadius: diameter / 2 });
}

function axleOf(axle: AxleInput, place: string): AxleBrakes {
  const { thresholdPressure, tyreRadius } = axle;
  return { torquePerPressure: 2 * wheelTorquePerPressure(axle, place), thresholdPressure, tyreRadius };
}

type ServoInput = Pick<SystemInput, "servoGain" | "servoLimit">;

/** @throws CalcRefusal (`NOT_GIVEN`) when only half of a servo is given */
export function servoOf({ servoGain, servoLimit }: ServoInput, place = ""): Servo | undefined {
  if (servoGain === undefined && servoLimit === undefined) return undefined;
  return {
    gain: given(servoGain, `${place}servoGain`, "the servo's gain, as its limit is given"),
    assistLimit: given(servoLimit, `${place}servoLimit`, "the most the servo adds, as its gain is given"),
  };
}

function valveOf({ valveCutIn, valveSlope }: SystemInput, place: string): RearValve | undefined {
  if (valveCutIn === undefined && valveSlope === undefined) return undefined;
  return {
    cutIn: given(valveCutIn, `${place}valveCutIn`, "the valve's cut-in pressure, as its slope is given"),
    slope: given(
      valveSlope,
      `${place}valveSlope`,
      "the valve's slope, as its cut-in is given; 0 for a limiting one",
    ),
  };
}

/** The system as the functions take it. `place` goes before the names of fields in messages ("after."). */
export function systemOf(input: SystemInput, place = ""): BrakeSystem {
  const { pedalRatio, masterBore, rearMasterBore, frontForceShare } = input;
  const twin = rearMasterBore !== undefined || frontForceShare !== undefined;
  const pressurePerForce = twin
    ? balanceBar(
        {
          front: masterBore,
          rear: given(rearMasterBore, `${place}rearMasterBore`, "the rear cylinder's bore"),
        },
        given(frontForceShare, `${place}frontForceShare`, "where the balance bar stands"),
      )
    : tandemCylinder(masterBore);
  return {
    pedalRatio,
    servo: servoOf(input, place),
    pressurePerForce,
    valve: valveOf(input, place),
    front: axleOf(input.front, `${place}front.`),
    rear: axleOf(input.rear, `${place}rear.`),
  };
}
