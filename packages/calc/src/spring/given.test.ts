import { describe, expect, test } from "vitest";
import { z } from "zod";
import { quantity } from "../catalogue/field";
import { givenSteps } from "./given";

const schema = z.object({
  rate: quantity("rate", { label: "Spring rate", unit: "lb/in" }),
  length: quantity("length", { label: "Free length" }).optional(),
  ends: z.enum(["plain", "ground"]).meta({ title: "Ends" }),
  plain: z.number(),
  list: z.array(z.number()),
});

describe("inputs as lines of the working", () => {
  test("carry label, dimension and unit of their field, and the symbol asked for", () => {
    const steps = givenSteps(
      schema,
      { rate: 20_000, length: 0.3, ends: "plain", plain: 2, list: [1] },
      { symbols: { rate: "k" } },
    );
    expect(steps).toEqual([
      { symbol: "k", label: "Spring rate", value: 20_000, dimension: "rate", unit: "lb/in" },
      { symbol: "length", label: "Free length", value: 0.3, dimension: "length", unit: "mm" },
      { symbol: "ends", label: "Ends", value: "plain" },
      { symbol: "plain", label: "plain", value: 2 },
    ]);
  });

  test("leave out what was not given, and say whose they are", () => {
    const steps = givenSteps(schema, { rate: 1, length: undefined }, { prefix: "Front: " });
    expect(steps.map(({ label }) => label)).toEqual(["Front: Spring rate"]);
  });
});
