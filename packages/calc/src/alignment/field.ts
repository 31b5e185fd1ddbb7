import { z } from "zod";
import type { Source } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { readAsField } from "../catalogue/notation-issue";
import { quickly } from "../catalogue/quick-field";
import { parseToe } from "../quantity/toe";

/** How a toe field is labelled. */
export interface ToeOptions {
  readonly label: string;
  readonly help?: string;
}

const toeHelp =
  "A number is this wheel's toe-in in rad; text says in or out (or a sign) and per side or total, as 0°10' toe-in per side or 1/16 in toe-out total on 13 in rim";

/**
 * A zod field for the toe of one wheel: an SI number (rad, toe-in positive) or trade notation. Text that gives a total
 * is shared evenly.
 */
export function toe({ label, help }: ToeOptions) {
  const field = z
    .union([z.number(), z.string()], { error: () => "a number (in rad) or toe in words is wanted" })
    .transform((value, context) => {
      const read = typeof value === "number" ? value : readAsField(() => parseToe(value).perWheel, context);
      if (read === undefined) return z.NEVER;
      if (Math.abs(read) < Math.PI / 4) return read;
      const message = `${JSON.stringify(value)}: ${label} must lie within ±45°`;
      context.addIssue({ code: "custom", message, params: { code: "OUT_OF_RANGE" } });
      return z.NEVER;
    })
    .meta({
      title: label,
      description: `${help === undefined ? "" : `${help}. `}${toeHelp}.`,
      dimension: "angle",
      unit: "'",
    });
  return quickly(field, (value) => typeof value === "number" && Math.abs(value) < Math.PI / 4);
}

/** The diameter a rim distance is measured over. */
export const rimDiameter = quantity("length", {
  label: "Diameter measured over",
  help: "Edge to edge of the rim where the gauge touches; the nominal size stands for it in most old data",
  above: 0,
  max: 1,
  unit: "in",
});

/** The vocabulary the angles and signs are taken from. */
export const isoSource: Source = {
  title: "ISO 8855:2011, Road vehicles: vehicle dynamics and road-holding ability, vocabulary",
  locus: "7.1, 7.2",
  status: "memory",
};
/** For what follows from geometry alone. */
export const geometrySource: Source = { title: "First principles (geometry)", status: "memory" };
