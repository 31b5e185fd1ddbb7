import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { toe } from "../alignment/field";
import { quantity } from "./field";
import { quickly } from "./quick-field";

/** The same field as zod runs it without the short way: `.meta()` copies it. */
const slow = <F extends z.ZodType>(field: F) => field.meta({});
const outcome = (field: z.ZodType, value: unknown) => {
  const { success, data, error } = field.safeParse(value);
  return { success, data, issues: error?.issues };
};

describe("a field that takes plain numbers at once", () => {
  const bounds = { label: "Track", unit: "mm" } as const;
  // Made within each test: what is made while a file loads is not tried by mutation.
  const fields: readonly (readonly [string, () => z.ZodType])[] = [
    ["open", () => quantity("length", bounds)],
    ["from and to, included", () => quantity("length", { ...bounds, min: 1, max: 2 })],
    ["from and to, left out", () => quantity("length", { ...bounds, above: 1, below: 2 })],
    ["optional", () => quantity("length", { ...bounds, above: 1, max: 2 }).optional()],
    ["with a value to begin with", () => quantity("length", { ...bounds, min: 1 }).prefault("1500 mm")],
    ["toe", () => toe({ label: "Toe" })],
  ];
  const odd = fc.constantFrom(
    ...[Number.NaN, Number.POSITIVE_INFINITY, -0, 1, 2, 1.5, Math.PI / 4, -Math.PI / 4],
    ...["1500 mm", "1,500 mm", "16 psi", "", "10' toe-in per side", null, undefined, true, 3n, {}, [1]],
  );
  const numbers = fc.double({ min: -3, max: 3, noNaN: true });

  test.each(fields)("%s: answers and errors are those of the long way", (_, make) => {
    const field = make();
    fc.assert(
      fc.property(fc.oneof(odd, numbers), (value) => {
        expect(outcome(field, value)).toEqual(outcome(slow(field), value));
      }),
    );
  });

  test("takes what lies within bounds and nothing else, the bounds included or not as they are meant", () => {
    const open = quantity("length", { label: "Track", above: 1, below: 2 });
    const closed = quantity("length", { label: "Track", min: 1, max: 2 });
    const takes = (field: z.ZodType) =>
      [0.999, 1, 1.5, 2, 2.001].map((value) => field.safeParse(value).success);
    expect(takes(open)).toEqual([false, false, true, false, false]);
    expect(takes(closed)).toEqual([false, true, true, true, false]);
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
      expect(quantity("length", { label: "Track" }).safeParse(bad).success).toBe(false);
  });

  test("does not ask the field about what passes, and asks it about all else", () => {
    const asked: unknown[] = [];
    const watched = z.unknown().transform((value) => {
      asked.push(value);
      return value;
    });
    const field = quickly(watched, (value) => value === 1);
    expect([1, 2, "1"].map((value) => field.parse(value))).toEqual([1, 2, "1"]);
    expect(asked).toEqual([2, "1"]);
  });

  test("a list or an object of such fields names the place of the one that is wrong", () => {
    const list = z.object({ wheels: z.array(quantity("mass", { label: "Wheel", min: 1 })) });
    expect(list.parse({ wheels: [1, "2 kg"] })).toEqual({ wheels: [1, 2] });
    expect(list.safeParse({ wheels: [1, 0] }).error?.issues[0]?.path).toEqual(["wheels", 1]);
  });
});
