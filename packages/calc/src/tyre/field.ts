import { z } from "zod";
import type { WorkingStep } from "../catalogue/computation";
import { designation } from "../catalogue/designation-field";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { tyreAspect } from "../quantity/designation/tyre-size";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import {
  rollingCircumference,
  rollingFactors,
  type TyreConstruction,
  tyreConstructions,
  tyreOverallDiameter,
} from "./size";

/** A tyre by its size, or by what was measured on it; a measurement goes before the size. */
export const tyreSchema = z.strictObject({
  size: designation("tyre", {
    label: "Tyre size",
    help: "As moulded on the tyre; or give a measured diameter or circumference",
  }).optional(),
  aspect: quantity("ratio", {
    label: "Aspect ratio",
    help: "Where the size states none: section height over width, from the maker's data",
    min: 0.25,
    max: 1.1,
  }).optional(),
  overallDiameter: quantity("length", {
    label: "Measured overall diameter",
    above: 0.2,
    max: 1.2,
    unit: "mm",
  }).optional(),
  rollingCircumference: quantity("length", {
    label: "Measured rolling circumference",
    help: "One turn of the loaded wheel along the ground, or several divided by their number",
    above: 0.6,
    max: 4,
    unit: "mm",
  }).optional(),
  construction: z
    .enum(tyreConstructions)
    .meta({
      title: "Construction",
      description: "Needed only with a measured diameter and no size: radial or crossPly",
    })
    .optional(),
});
export type TyreInput = z.output<typeof tyreSchema>;

/** A tyre worked out as far as its input goes. */
export interface ResolvedTyre {
  /** Overall diameter, m; `null` where only the circumference is known. */
  readonly diameter: number | null;
  /** Rolling circumference, m. */
  readonly circumference: number;
  /** Lines of the working. */
  readonly steps: () => readonly WorkingStep[];
  readonly warnings: readonly string[];
}

/**
 * Diameter and rolling circumference of a tyre, with their working.
 * @param words how this tyre is called in working and warnings, e.g. "Before"
 * @throws CalcRefusal when neither size nor measurement says enough
 */
export function resolveTyre(
  input: TyreInput,
  { words, place }: { words: string; place: string },
): ResolvedTyre {
  const { diameter, steps, warnings } = diameterOf(input, { words, place });
  const given = () => givenTyreSteps(input, words);
  const construction = input.construction ?? input.size?.construction;
  if (input.rollingCircumference !== undefined)
    return {
      diameter,
      circumference: input.rollingCircumference,
      steps: () => [...given(), ...steps()],
      warnings,
    };
  if (diameter === null)
    throw new CalcRefusal(
      "TYRE_NOT_KNOWN",
      `${words}: give a size, a measured overall diameter or a measured rolling circumference`,
      place,
    );
  if (construction === undefined)
    throw new CalcRefusal(
      "CONSTRUCTION_NEEDED",
      `${words}: say whether the tyre is radial or crossPly, or measure its rolling circumference`,
      `${place}.construction`,
    );
  const circumference = rollingCircumference(diameter, construction);
  const estimate = () => circumferenceStep({ circumference, construction, words });
  return { diameter, circumference, steps: () => [...given(), ...steps(), ...estimate()], warnings };
}

function givenTyreSteps(input: TyreInput, words: string): WorkingStep[] {
  const symbols = { aspect: "A", overallDiameter: "D", rollingCircumference: "U" };
  const size =
    input.size === undefined
      ? []
      : [{ symbol: "size", label: `${words}: tyre size`, value: input.size.canonical }];
  return [...size, ...givenSteps(tyreSchema, input, { symbols, prefix: `${words}: ` })];
}

interface Estimated {
  readonly circumference: number;
  readonly construction: TyreConstruction;
  readonly words: string;
}

function circumferenceStep({ circumference, construction, words }: Estimated): WorkingStep[] {
  const note = "estimated by the ETRTO guideline, from memory; measure it where it matters";
  const formula = `${rollingFactors[construction]}·D for ${construction === "radial" ? "radials" : "cross-plies"}`;
  return worked([["U", `${words}: rolling circumference`, formula, circumference, "length", "mm", note]]);
}

const none = (): readonly WorkingStep[] => [];

type Diameter = Pick<ResolvedTyre, "diameter" | "steps" | "warnings">;

function diameterOf(input: TyreInput, { words, place }: { words: string; place: string }): Diameter {
  if (input.overallDiameter !== undefined)
    return { diameter: input.overallDiameter, steps: none, warnings: [] };
  if (input.size === undefined) return { diameter: null, steps: none, warnings: [] };
  const stated = tyreAspect(input.size);
  if (
    input.aspect !== undefined &&
    input.size.aspect !== null &&
    Math.abs(input.aspect - input.size.aspect) > 1e-9
  )
    throw new CalcRefusal(
      "TWO_ASPECTS",
      `${words}: ${input.size.canonical} states its aspect ratio itself; leave the other out`,
      `${place}.aspect`,
    );
  const aspect = input.aspect ?? stated?.ratio;
  if (aspect === undefined) {
    if (input.rollingCircumference !== undefined) return { diameter: null, steps: none, warnings: [] };
    throw new CalcRefusal(
      "ASPECT_NEEDED",
      `${words}: ${input.size.canonical} states no aspect ratio and none is usual: give it, or measure the tyre`,
      `${place}.aspect`,
    );
  }
  const diameter = tyreOverallDiameter({ ...input.size, aspect });
  const assumed = input.aspect === undefined && stated?.assumed === true;
  const note = assumed ? stated.note : undefined;
  return {
    diameter,
    steps: () =>
      worked([
        ["D", `${words}: overall diameter`, `rim + 2·width·${aspect}`, diameter, "length", "mm", note],
      ]),
    warnings: note === undefined ? [] : [`${words}: ${note}.`],
  };
}

/** Where tyre dimensions come from. */
export const tyreSources = [
  { title: "UN Regulation 30", locus: "6.1.2, overall diameter d + 2H", status: "memory" },
  {
    title: "ETRTO / WdK guideline",
    locus: "rolling circumference 3.05 D radial, 2.99 D diagonal",
    status: "memory",
  },
] as const;
