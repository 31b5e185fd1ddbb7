import { z } from "zod";
import type { WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { type ElasticModuli, moduliOrSteel } from "../spring/material";
import type { Bar, BarFlexibility } from "./compliance";

/** Fields of a bar's section. */
export const sectionFields = {
  diameter: quantity("length", { label: "Outside diameter", above: 0, max: 0.1, unit: "mm" }),
  bore: quantity("length", { label: "Bore of a tubular bar", min: 0, max: 0.1, unit: "mm" }).optional(),
};

/** Fields of a U-shaped bar, its material, and what gives beside it. */
export const barFields = {
  ...sectionFields,
  middleLength: quantity("length", {
    label: "Length of the middle, bend to bend",
    help: "The part that twists",
    above: 0,
    max: 3,
    unit: "mm",
  }),
  leverLength: quantity("length", {
    label: "Lever",
    help: "From the middle's axis to the drop link's centre, square to the bar",
    above: 0,
    max: 1,
    unit: "mm",
  }),
  armLength: quantity("length", {
    label: "Length of the arm along itself",
    help: "From the bend to the drop link's centre; the same as the lever where the arm is square to the bar",
    above: 0,
    max: 1.5,
    unit: "mm",
  }),
  bushSpacing: quantity("length", {
    label: "Distance between the mounting bushes",
    help: "Centre to centre; left out, bending of the middle is not counted",
    above: 0,
    max: 3,
    unit: "mm",
  }).optional(),
  linkRate: quantity("rate", {
    label: "Rate of one drop link with its bushes",
    help: "Left out, links are taken as rigid",
    above: 0,
    unit: "N/mm",
  }).optional(),
  bushRate: quantity("rate", {
    label: "Radial rate of one mounting bush",
    help: "Left out, bushes are taken as rigid; needs the distance between them",
    above: 0,
    unit: "N/mm",
  }).optional(),
  youngModulus: quantity("pressure", {
    label: "Young's modulus",
    help: "Left out, that of steel",
    above: 0,
    unit: "GPa",
  }).optional(),
  shearModulus: quantity("pressure", {
    label: "Shear modulus",
    help: "Left out, that of steel",
    above: 0,
    unit: "GPa",
  }).optional(),
};

export const barSchema = z.object(barFields);
export type BarInput = z.output<typeof barSchema>;

/** Symbols of {@link barFields} in the formulas. */
export const barSymbols = {
  diameter: "d",
  bore: "b",
  middleLength: "B",
  leverLength: "A",
  armLength: "C",
  bushSpacing: "S",
  linkRate: "k_l",
  bushRate: "k_m",
  youngModulus: "E",
  shearModulus: "G",
} as const;

/** The bar and its surroundings as the functions take them. */
export function barOf(input: BarInput): { bar: Bar; flexibility: BarFlexibility; moduli: ElasticModuli } {
  const { middleLength, leverLength, armLength, bushSpacing, linkRate, bushRate } = input;
  const section = { diameter: input.diameter, bore: input.bore };
  const moduli = moduliOrSteel({ young: input.youngModulus, shear: input.shearModulus });
  const bar = { section, middleLength, leverLength, armLength, bushSpacing, moduli };
  return { bar, flexibility: { linkRate, bushRate }, moduli };
}

/** Lines of the working for whatever was not given and had to be taken as something. */
export function assumedSteps(input: BarInput, { young, shear }: ElasticModuli): WorkingStep[] {
  const steel = "taken: steel, Shigley Table A-5";
  const steps: WorkingStep[] = [];
  if (input.youngModulus === undefined)
    steps.push({
      symbol: "E",
      label: "Young's modulus",
      value: young,
      dimension: "pressure",
      unit: "GPa",
      note: steel,
    });
  if (input.shearModulus === undefined)
    steps.push({
      symbol: "G",
      label: "Shear modulus",
      value: shear,
      dimension: "pressure",
      unit: "GPa",
      note: steel,
    });
  if (input.bushSpacing === undefined)
    steps.push({
      symbol: "S",
      label: "Distance between the mounting bushes",
      value: "not given: bending of the middle is left out",
    });
  if (input.bushRate === undefined)
    steps.push({
      symbol: "k_m",
      label: "Radial rate of one mounting bush",
      value: "not given: taken as rigid",
    });
  if (input.linkRate === undefined)
    steps.push({ symbol: "k_l", label: "Rate of one drop link", value: "not given: taken as rigid" });
  return steps;
}

/** Warnings for shapes the straight-armed U does not describe well. */
export function shapeWarnings({ armLength, leverLength }: BarInput): string[] {
  if (armLength <= 1.5 * leverLength) return [];
  return [
    "The arm is more than half as long again as its lever: a bar with curved or cranked arms is described only roughly.",
  ];
}

/** Where the formulas come from. */
export const barSources = [
  { title: "Puhn, How to Make Your Car Handle", locus: "anti-roll bar rate formula", status: "read-formula" },
  { title: "SAE Spring Design Manual", locus: "stabiliser bars", status: "memory" },
  { title: "Shigley, Mechanical Engineering Design", locus: "Table A-5, moduli of steel", status: "read" },
] as const;
