import { z } from "zod";
import { assemblies } from "../characteristic/characteristic";
import { conditionSchema } from "../condition/schema";
import { type Check, stations } from "./check";

const words = (maximum: number) => z.string().trim().min(1).max(maximum);

const criterion = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("seen") }),
  z.strictObject({
    kind: z.literal("measured"),
    characteristic: words(120).exactOptional(),
    perCorner: z.boolean().exactOptional(),
    text: words(200),
  }),
  z.strictObject({
    kind: z.literal("datedItem"),
    characteristic: words(120).exactOptional(),
    text: words(200),
  }),
  z.strictObject({ kind: z.literal("document") }),
]);

/** Reads a check; what is too long for a sheet is refused. */
export const checkSchema: z.ZodType<Check> = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "small letters, digits and single dashes"),
  station: z.enum(stations),
  assembly: z.enum(assemblies),
  text: words(240),
  short: words(60).exactOptional(),
  method: words(400).exactOptional(),
  criterion,
  when: conditionSchema,
  why: words(240).exactOptional(),
  source: z.strictObject({
    title: words(200),
    edition: words(60).exactOptional(),
    clause: words(60).exactOptional(),
  }),
  caution: words(240).exactOptional(),
});
