import { z } from "zod";
import { quantity } from "../catalogue/field";

/** What braking needs of the car. */
export const carFields = {
  frontMass: quantity("mass", { label: "Mass on the front wheels", help: "As driven", above: 0, max: 5000 }),
  rearMass: quantity("mass", { label: "Mass on the rear wheels", help: "As driven", above: 0, max: 5000 }),
  wheelbase: quantity("length", { label: "Wheelbase", above: 0, max: 6, unit: "mm" }),
  cgHeight: quantity("length", { label: "Height of the centre of gravity", above: 0, max: 2, unit: "mm" }),
};
export const carSymbols = { frontMass: "m_f", rearMass: "m_r", wheelbase: "L", cgHeight: "h" } as const;

/** Foot to push rod. */
export const pedalFields = {
  pedalForce: quantity("force", {
    label: "Force on the pedal",
    help: "A fit driver has about 500 N in hand",
    min: 0,
    max: 3000,
    unit: "N",
  }),
  pedalRatio: quantity("ratio", {
    label: "Pedal ratio",
    help: "Pedal travel over push-rod travel",
    above: 0,
    max: 15,
  }),
};
export const servoFields = {
  servoGain: quantity("ratio", {
    label: "Servo gain",
    help: "Output over input before the servo runs out; left out, no servo",
    min: 1,
    max: 12,
  }).optional(),
  servoLimit: quantity("force", {
    label: "Most the servo adds at the push rod",
    help: "Diaphragm area × depression. A remote servo: its pressure limit × master cylinder area",
    min: 0,
    max: 20_000,
    unit: "N",
  }).optional(),
};
export const boreField = quantity("length", {
  label: "Master cylinder bore",
  above: 0,
  max: 0.06,
  unit: "mm",
});

const frictionField = quantity("ratio", {
  label: "Friction of the pad",
  help: "Road pads 0.3 to 0.45; the maker's figure, warm",
  above: 0,
  max: 1,
});
export const thresholdField = quantity("pressure", {
  label: "Pressure before the brake comes on",
  help: "Discs about 0.5 bar, drums with return springs 3 to 6 bar; left out, none",
  min: 0,
  max: 3e6,
  unit: "bar",
}).optional();
export const tyreRadiusField = quantity("length", {
  label: "Loaded rolling radius of the tyre",
  above: 0,
  max: 0.6,
  unit: "mm",
});
/** Pistons of one side of the disc, or the one piston at one shoe. */
export const pistonField = z
  .array(quantity("length", { label: "Piston diameter", above: 0, max: 0.12, unit: "mm" }))
  .min(1)
  .max(8)
  .meta({
    title: "Piston diameters",
    description:
      "Disc: those of ONE side of the disc, one by one. Drum: the one piston that works on one shoe.",
  });

export const discFields = {
  pistonDiameters: pistonField,
  friction: frictionField,
  effectiveRadius: quantity("length", {
    label: "Effective radius",
    help: "Wheel centre to the middle of the pad; or give disc diameter and pad height",
    above: 0,
    max: 0.3,
    unit: "mm",
  }).optional(),
  discDiameter: quantity("length", { label: "Disc diameter", above: 0, max: 0.6, unit: "mm" }).optional(),
  padHeight: quantity("length", {
    label: "Radial height of the pad",
    above: 0,
    max: 0.15,
    unit: "mm",
  }).optional(),
};

/** The brakes of one axle: the two wheels have the same. */
export const axleSchema = z.strictObject({
  kind: z.enum(["disc", "drum"]).meta({ title: "Kind" }),
  ...discFields,
  friction: frictionField.optional(),
  brakeFactor: quantity("ratio", {
    label: "Brake factor of the drum, both shoes",
    help: "Simplex about 2, duplex about 3 to 3.5; see brake.drumFactor",
    above: 0,
    max: 10,
  }).optional(),
  drumDiameter: quantity("length", { label: "Drum diameter", above: 0, max: 0.5, unit: "mm" }).optional(),
  thresholdPressure: thresholdField,
  tyreRadius: tyreRadiusField,
});
export type AxleInput = z.output<typeof axleSchema>;
export const axleSymbols = {
  friction: "μ",
  effectiveRadius: "r_e",
  discDiameter: "D",
  padHeight: "h_p",
  brakeFactor: "C*",
  drumDiameter: "D",
  thresholdPressure: "p₀",
  tyreRadius: "r_t",
} as const;

/** A whole brake system. */
export const systemFields = {
  pedalRatio: pedalFields.pedalRatio,
  ...servoFields,
  masterBore: quantity("length", {
    label: "Master cylinder bore",
    help: "Single or tandem; with a balance bar that of the front cylinder",
    above: 0,
    max: 0.06,
    unit: "mm",
  }),
  rearMasterBore: quantity("length", {
    label: "Bore of the rear cylinder",
    help: "Only with a balance bar and two cylinders",
    above: 0,
    max: 0.06,
    unit: "mm",
  }).optional(),
  frontForceShare: quantity("ratio", {
    label: "Share of the push-rod force on the front cylinder",
    help: "Only with a balance bar: 50 % in its middle",
    min: 0,
    max: 1,
    unit: "%",
  }).optional(),
  valveCutIn: quantity("pressure", {
    label: "Pressure at which the rear valve cuts in",
    help: "Left out, no valve",
    min: 0,
    max: 2e7,
    unit: "bar",
  }).optional(),
  valveSlope: quantity("ratio", {
    label: "Slope of the rear valve beyond that",
    help: "0 for a limiting valve; reducing ones about 0.3 to 0.5",
    min: 0,
    max: 1,
  }).optional(),
  front: axleSchema.meta({ title: "Front brakes" }),
  rear: axleSchema.meta({ title: "Rear brakes" }),
};
export const systemSchema = z.strictObject(systemFields);
export type SystemInput = z.output<typeof systemSchema>;
export const systemSymbols = {
  pedalForce: "F_p",
  pedalRatio: "i",
  servoGain: "g",
  servoLimit: "F_s",
  masterBore: "d",
  rearMasterBore: "d_r",
  frontForceShare: "x",
  valveCutIn: "p_c",
  valveSlope: "s",
} as const;
