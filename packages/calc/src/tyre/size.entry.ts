import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { worked } from "../spring/worked";
import { resolveTyre, tyreSchema, tyreSources } from "./field";
import { wheelTurns } from "./gearing";

export const tyreSizeComputation = defineComputation({
  name: "tyre.size",
  title: "Tyre dimensions",
  summary:
    "Overall diameter, section height and rolling circumference of a tyre from its size or from what was measured.",
  input: z.object(tyreSchema.shape),
  outputs: {
    overallDiameter: {
      how: ["D", "rim and two section heights"],
      label: "Overall diameter, unloaded",
      dimension: "length",
      unit: "mm",
      decimals: 1,
    },
    sectionHeight: { label: "Section height", dimension: "length", unit: "mm", decimals: 1 },
    sectionWidth: {
      how: ["S", "as the size says"],
      label: "Nominal section width",
      dimension: "length",
      unit: "mm",
      decimals: 0,
    },
    circumference: { label: "Rolling circumference", dimension: "length", unit: "mm", decimals: 0 },
    turnsPerMile: { label: "Turns per mile", dimension: "count", decimals: 0 },
    turnsPerKilometre: {
      how: ["n_km", "1000 m over the rolling circumference"],
      label: "Turns per kilometre",
      dimension: "count",
      decimals: 0,
    },
  },
  source: tyreSources,
  validity:
    "Nominal size of a new tyre: makes of one size differ by some 1 to 2 %, worn ones by more. Where no aspect ratio is marked, makers' data differ.",
  example: { size: "165/80 R 15" },
  compute(given) {
    const { diameter, circumference, steps, warnings } = resolveTyre(given, { words: "Tyre", place: "size" });
    const { size } = given;
    const sectionHeight = size === undefined || diameter === null ? null : (diameter - size.rimDiameter) / 2;
    const turnsPerMile = wheelTurns(1609.344, circumference);
    const turnsPerKilometre = wheelTurns(1000, circumference);
    const working = () => [
      ...steps(),
      ...worked([
        ["H", "Section height", "(D − rim)/2", sectionHeight, "length", "mm"],
        ["n", "Turns per mile", "1609.344 m/U", turnsPerMile, "count"],
      ]),
    ];
    const outputs = {
      overallDiameter: diameter,
      sectionHeight,
      sectionWidth: size?.sectionWidth ?? null,
      circumference,
      turnsPerMile,
      turnsPerKilometre,
    };
    return { outputs, working, warnings };
  },
});
