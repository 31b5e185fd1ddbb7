import type { z } from "zod";
import type { WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { type AxleName, axleNames, type RollAxle, type RollCar } from "./car";

const length = (label: string, help: string, max: number) =>
  quantity("length", { label, help, above: 0, max, unit: "mm" });

/** Fields of an axle's roll stiffness. */
export const stiffnessFields = {
  track: length("Track", "Between the wheels' contact centres", 3),
  springWheelRate: quantity("rate", {
    label: "Wheel rate of one spring",
    help: "Spring rate × motion ratio²; for a live axle the spring rate itself",
    above: 0,
    max: 1e6,
    unit: "N/mm",
  }),
  springBase: length(
    "Distance between the springs of a live axle",
    "Left out for independent suspension",
    2,
  ).optional(),
  barWheelRate: quantity("rate", {
    label: "Anti-roll bar rate at the wheel, both wheels moving oppositely",
    help: "Left out: no bar",
    min: 0,
    max: 1e6,
    unit: "N/mm",
  }).optional(),
  tyreRate: quantity("rate", {
    label: "Vertical rate of one tyre",
    help: "Left out, tyres are taken as rigid",
    above: 0,
    unit: "N/mm",
  }).optional(),
};

/** All fields of an axle in roll. */
export const axleFields = {
  ...stiffnessFields,
  mass: quantity("mass", {
    label: "Mass on this axle",
    help: "Both wheels' scale readings together",
    above: 0,
    max: 5000,
    unit: "kg",
  }),
  unsprungMass: quantity("mass", {
    label: "Unsprung mass of this axle",
    help: "Both sides together",
    min: 0,
    max: 1000,
    unit: "kg",
  }),
  unsprungHeight: quantity("length", {
    label: "Height of the unsprung mass",
    help: "About the loaded radius",
    min: 0,
    max: 1,
    unit: "mm",
  }),
  rollCentreHeight: quantity("length", {
    label: "Roll-centre height",
    help: "Above the ground, negative below",
    min: -1,
    max: 1,
    unit: "mm",
  }),
};

export const cgHeightField = length(
  "Height of the car's centre of gravity",
  "Of the whole car, above the ground",
  1.5,
);

export const axleSymbols = {
  track: "t",
  springWheelRate: "k_s",
  springBase: "s",
  barWheelRate: "k_b",
  tyreRate: "k_t",
  mass: "m",
  unsprungMass: "m_u",
  unsprungHeight: "h_u",
  rollCentreHeight: "h_rc",
  springMotionRatio: "MR",
  barDiameter: "d",
} as const;

type AxleInput = z.output<z.ZodObject<typeof axleFields>>;

/** An axle as the functions take it; no bar given means none fitted, which the working says. */
function axleOf(input: AxleInput): RollAxle {
  return { ...input, barWheelRate: input.barWheelRate ?? 0 };
}

/** The car of an input. */
export function carOf(input: { front: AxleInput; rear: AxleInput; cgHeight: number }): RollCar {
  return { front: axleOf(input.front), rear: axleOf(input.rear), cgHeight: input.cgHeight };
}

const axleWords: Readonly<Record<AxleName, string>> = { front: "Front: ", rear: "Rear: " };

/** Lines of the working for both axles, and for what was not given of them. */
export function axleSteps(schema: z.ZodObject, input: Readonly<Record<AxleName, AxleInput>>): WorkingStep[] {
  return axleNames.flatMap((name) => [
    ...givenSteps(schema, input[name], { symbols: axleSymbols, prefix: axleWords[name] }),
    ...assumed(input[name]).map((step) => ({ ...step, label: `${axleWords[name]}${step.label}` })),
  ]);
}

/** What an axle is taken to have where nothing is given. */
export function assumed({
  barWheelRate,
  tyreRate,
}: Pick<AxleInput, "barWheelRate" | "tyreRate">): WorkingStep[] {
  const steps: WorkingStep[] = [];
  if (barWheelRate === undefined)
    steps.push({ symbol: "k_b", label: "Anti-roll bar", value: "not given: taken as not fitted" });
  if (tyreRate === undefined)
    steps.push({ symbol: "k_t", label: "Tyre rate", value: "not given: taken as rigid" });
  return steps;
}

/** Where the formulas come from. */
export const rollSources = [
  {
    title: "Milliken & Milliken, Race Car Vehicle Dynamics (1995)",
    locus: "ch. 18, load transfer",
    status: "memory",
  },
  {
    title: "Automotive Chassis Engineering (Springer 2018)",
    locus: "ch. 3, worked example p. 174",
    status: "read",
  },
] as const;

/** Where the model holds. */
export const rollValidity =
  "Steady cornering on the level with all wheels down; linear springs, bars and tyres, fixed roll centres, a rigid body; no side deflection of tyres, no aerodynamic forces. Roll beyond 10° leaves it.";

/** Example axles of a small sports car. */
export const exampleAxles = {
  front: {
    track: "1300 mm",
    mass: "390 kg",
    unsprungMass: "62 kg",
    unsprungHeight: "285 mm",
    rollCentreHeight: "45 mm",
    springWheelRate: "14.5 N/mm",
    barWheelRate: "7.2 N/mm",
  },
  rear: {
    track: "1290 mm",
    mass: "430 kg",
    unsprungMass: "70 kg",
    unsprungHeight: "285 mm",
    rollCentreHeight: "110 mm",
    springWheelRate: "17 N/mm",
    barWheelRate: "2.4 N/mm",
  },
} as const;
