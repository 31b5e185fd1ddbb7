import { designationKinds, dimensions, findUnit, type MeasuredDimension } from "@trunnion/calc";
import { z } from "zod";
import { assemblies, type Characteristic } from "./characteristic";
import { foldName } from "./fold-name";

/** A club's own dictionary is bounded, so that forms and indexes stay so. */
export const characteristicLimits = {
  key: 120,
  label: 80,
  help: 400,
  also: 20,
  choices: 60,
  text: 2000,
} as const;

const name = z.string().trim().min(1).max(characteristicLimits.label);
const names = z.array(name).max(characteristicLimits.also).readonly();

const base = {
  key: z
    .string()
    .max(characteristicLimits.key)
    .regex(/^[a-z][A-Za-z0-9]*(\.[a-z][A-Za-z0-9]*)+$/, "two or more dotted words, e.g. hood.straps"),
  label: name,
  assembly: z.enum(assemblies),
  sided: z.boolean(),
  help: z.string().trim().min(1).max(characteristicLimits.help),
  setting: z.boolean(),
  removable: z.boolean(),
  also: names.exactOptional(),
};

const measured = dimensions.filter((dimension) => dimension !== "text") as readonly MeasuredDimension[];

const quantity = z
  .strictObject({
    ...base,
    kind: z.literal("quantity"),
    dimension: z.enum(measured),
    units: z.strictObject({ metric: z.string().max(40), imperial: z.string().max(40) }),
    minimum: z.number().exactOptional(),
    maximum: z.number().exactOptional(),
    usual: z.strictObject({ lowest: z.number(), highest: z.number() }).exactOptional(),
    notation: z.literal("toe").exactOptional(),
  })
  .superRefine(({ dimension, units, minimum, maximum, usual, notation }, context) => {
    for (const system of ["metric", "imperial"] as const) {
      if (findUnit(dimension, units[system]) !== undefined) continue;
      context.addIssue({
        code: "custom",
        path: ["units", system],
        message: `"${units[system]}" is no unit of ${dimension}`,
      });
    }
    if (minimum !== undefined && maximum !== undefined && minimum >= maximum) {
      context.addIssue({
        code: "custom",
        path: ["maximum"],
        message: "the maximum must be above the minimum",
      });
    }
    if (usual !== undefined && usual.lowest >= usual.highest) {
      context.addIssue({
        code: "custom",
        path: ["usual"],
        message: "the highest usual must be above the lowest",
      });
    }
    if (notation === "toe" && dimension !== "angle") {
      context.addIssue({ code: "custom", path: ["notation"], message: "toe is an angle" });
    }
  });

const choice = z
  .strictObject({
    ...base,
    kind: z.literal("choice"),
    choices: z
      .array(
        z.strictObject({
          code: z.string().regex(/^[a-z][A-Za-z0-9]*$/),
          label: name,
          also: names.exactOptional(),
        }),
      )
      .min(2)
      .max(characteristicLimits.choices)
      .readonly(),
  })
  .superRefine(({ choices }, context) => {
    const taken = new Map<string, string>();
    for (const [index, { code, label, also = [] }] of choices.entries()) {
      for (const spelling of new Set([code, label, ...also].map(foldName))) {
        const holder = taken.get(spelling);
        if (holder === undefined) taken.set(spelling, code);
        else {
          const message = `"${spelling}" is a spelling of ${holder} already`;
          context.addIssue({ code: "custom", path: ["choices", index], message });
        }
      }
    }
  });

/**
 * Reads a characteristic, for a club's own. Refuses what the engines could not work with: units of another
 * dimension, an inverted range, two choices of one spelling. Clashes with others are the book's to find.
 */
export const characteristicSchema: z.ZodType<Characteristic> = z.discriminatedUnion("kind", [
  quantity,
  choice,
  z.strictObject({ ...base, kind: z.literal("designation"), designation: z.enum(designationKinds) }),
  z.strictObject({
    ...base,
    kind: z.literal("text"),
    maximumLength: z.int().min(1).max(characteristicLimits.text),
  }),
  z.strictObject({ ...base, kind: z.literal("date") }),
]);
