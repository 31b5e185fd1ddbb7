import { describe, expect, test } from "vitest";
import { z } from "zod";
import { computations } from "./all";
import { quantity } from "./field";
import { issueWords } from "./issue-words";
import { inputOf, runComputation } from "./run";

/** What is said of an input, each with its place. */
function said(schema: z.ZodType, input: unknown): readonly string[] {
  const { error } = schema.safeParse(input, { error: issueWords });
  return (error?.issues ?? []).map(({ path, message }) => `${path.join(".")}: ${message}`);
}

const wheel = z.strictObject({
  track: quantity("length", { label: "Track" }),
  side: z.enum(["left", "right"]),
});

describe("an input that is not of the kind wanted", () => {
  test.each<[name: string, input: unknown, says: string]>([
    [
      "an object that is missing names its fields",
      undefined,
      "an object with track, side is wanted, and nothing is given",
    ],
    ["a list is no object", [1, 2], "an object with track, side is wanted, not a list"],
    ["null is no object", null, "an object with track, side is wanted, not null"],
    ["a number is no object", 3, "an object with track, side is wanted, not 3"],
    ["a text is no object, and is quoted", "wide", 'an object with track, side is wanted, not "wide"'],
    ["true is no object", true, "an object with track, side is wanted, not true"],
  ])("%s", (_, input, says) => {
    expect(said(z.object({ front: wheel }), { front: input })).toEqual([`front: ${says}`]);
  });

  test("a field that there is not is named, with those that there are", () => {
    expect(
      said(z.object({ front: wheel }), { front: { track: 1.3, side: "left", trakc: 1, toe: 2 } }),
    ).toEqual(['front: there is no field "trakc", "toe"; there are track, side']);
  });

  test("a choice is told with what may be chosen", () => {
    expect(said(wheel, { track: 1.3 })).toEqual([
      'side: one of "left", "right" is wanted, and nothing is given',
    ]);
    expect(said(wheel, { track: 1.3, side: "port" })).toEqual([
      'side: one of "left", "right" is wanted, not "port"',
    ]);
    expect(said(z.literal("arm"), {})).toEqual([': "arm" is wanted, not an object']);
    expect(said(z.union([z.literal(1), z.literal(2)]), 3)).toEqual([": one of 1, 2 is wanted, not 3"]);
  });

  test("kinds of an object that is told apart by one field are named", () => {
    const kinds = z.discriminatedUnion("kind", [
      z.object({ kind: z.literal("disc") }),
      z.object({ kind: z.literal("drum") }),
    ]);
    expect(said(kinds, { kind: "rim" })).toEqual(['kind: one of "disc", "drum" is wanted, not an object']);
  });

  test("several shapes without values of their own are told by the field's title", () => {
    const either = z.union([z.string(), z.boolean()]);
    expect(said(either, 3)).toEqual([": another value is wanted, not 3"]);
    expect(said(either.meta({ title: "Name or no name" }), 3)).toEqual([
      ": Name or no name is wanted, not 3",
    ]);
  });

  test("lists and texts are told how many there may be", () => {
    expect(said(z.array(z.number()).min(2).max(3), [1])).toEqual([": at least 2 of them is wanted"]);
    expect(said(z.array(z.number()).max(1), [1, 2])).toEqual([": at most 1 of them is wanted"]);
    expect(said(z.array(z.number()), {})).toEqual([": a list is wanted, not an object"]);
    expect(said(z.string().min(1), "")).toEqual([": at least 1 characters are wanted"]);
    expect(said(z.string(), 1)).toEqual([": a text is wanted, not 1"]);
    expect(said(z.int(), 1.5)).toEqual([": a whole number is wanted, not 1.5"]);
    expect(said(z.number().max(4), 5)).toEqual([": at most 4 is wanted"]);
    expect(said(z.date(), 5)).toEqual([": date is wanted, not 5"]);
  });

  test("what was entered is quoted at most for a line", () => {
    expect(said(z.enum(["a"]), "x".repeat(500))[0]).toHaveLength(
      `: "a" is wanted, not "${"x".repeat(40)}"`.length,
    );
  });

  test("what a field says itself stands", () => {
    expect(said(wheel, { track: "16 psi", side: "left" })[0]).toMatch(
      /"16 psi" is a pressure; a length is wanted/,
    );
    expect(
      said(
        z.custom(() => false),
        1,
      ),
    ).toEqual([": Invalid input"]);
  });
});

/** Every place in an input: the whole, each field, each item. */
function placesIn(value: unknown, path: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof value !== "object" || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([name, part]) => placesIn(part, [...path, name]))];
}

/** The same input with something else at one place. */
function withAt(value: unknown, [name, ...rest]: readonly string[], other: unknown): unknown {
  if (name === undefined) return other;
  const copy = Array.isArray(value) ? [...value] : { ...(value as object) };
  const parts = copy as Record<string, unknown>;
  parts[name] = withAt(parts[name], rest, other);
  return copy;
}

describe("every computation", () => {
  const wrong = [
    undefined,
    null,
    true,
    1e300,
    -1e300,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    "",
    "what",
    "1.234,5",
    {},
    [],
  ];

  test.each(computations.map((one) => [one.name, one] as const))(
    "%s tells each thing that is wrong with its input in our words, and is never at fault itself",
    (_, computation) => {
      for (const place of placesIn(computation.example)) {
        for (const other of wrong) {
          const messages = said(inputOf(computation), withAt(computation.example, place, other));
          for (const message of messages) {
            expect(message, `${place.join(".")} ${String(other)}`).not.toMatch(
              /invalid (input|option|disc)|expected|unrecognized|too (small|big)|received|\[object/i,
            );
          }
        }
      }
    },
  );

  test("names the place of a part that is missing", () => {
    const brakes = computations.find(({ name }) => name === "brake.system");
    if (brakes === undefined) throw new Error("there is no brake.system");
    const input = { ...(brakes.example as object), front: { kind: "drums" } };
    expect(() => runComputation(brakes, input)).toThrow(/one of \\"disc\\", \\"drum\\" is wanted/);
  });
});

test("a number too large to print is refused at its field, with the number", () => {
  const bounded = z.object({ track: quantity("length", { label: "Track", max: 3, unit: "mm" }) });
  expect(said(bounded, { track: 1e300 })).toEqual([
    "track: 1e+300: Track must be at most 3000 mm, but is 1e+300 m",
  ]);
  const share = z.object({ share: quantity("ratio", { label: "Share", max: 1 }) });
  expect(said(share, { share: 1e300 })).toEqual(["share: 1e+300: Share must be at most 1, but is 1e+300"]);
});
