import { z } from "zod";
import type { MeasuredDimension } from "../quantity/dimension";

/** What is measured on a car. A reading may be of any of these, so its kind is an input of its own. */
export const measuredDimensions = [
  "length",
  "angle",
  "mass",
  "pressure",
  "temperature",
  "force",
  "torque",
  "rate",
  "volume",
  "speed",
  "time",
  "soundLevel",
  "ratio",
] as const satisfies readonly MeasuredDimension[];

/** Most readings a form may hold. */
const formLimit = 500;

const reading = z.union([z.number(), z.string().max(80)], {
  error: () => "a number in SI or text with its unit is wanted",
});

/** Says which kind of quantity the readings are and in which unit they are shown. */
export const kindFields = {
  dimension: z.enum(measuredDimensions).meta({ title: "Kind of quantity" }),
  unit: z
    .string()
    .max(20)
    .meta({
      title: "Unit",
      description:
        "Answers are shown in it, and text without a unit is read in it. Numbers are always SI. Left out: the unit of the first text.",
    })
    .optional(),
};

/** A field for a list of readings. */
export const readingList = (title: string) =>
  z.array(reading).min(1).max(formLimit).meta({
    title,
    description: "Each a number in SI, or text in trade notation, such as 0°12' or 9/16 in.",
  });

/** A field for one quantity of the readings' kind. */
export const likeReading = (title: string, description: string) =>
  reading.meta({ title, description }).optional();

/** What is known of the instrument and of the one who read it. */
export const gaugeFields = {
  resolution: likeReading(
    "Resolution",
    "Smallest step shown or read to. Left out, the step the readings' own text implies.",
  ),
  accuracy: likeReading("Maker's accuracy", "The a of ±a, given without a level of confidence."),
  calibration: likeReading("Uncertainty on the calibration certificate", "Expanded, k = 2."),
  scatter: likeReading(
    "Scatter of a single reading",
    "Standard deviation found by repeating the whole set-up on an earlier occasion.",
  ),
};
