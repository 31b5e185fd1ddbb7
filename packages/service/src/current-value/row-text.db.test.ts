import { insertRows } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openOperator } from "../gate";
import { type CurrentRow, rowsDiffer } from "./policy";
import { heldTexts } from "./read";

let world: World;
let carId: string;

beforeAll(async () => {
  world = await openWorld();
  carId = (await world.car({ chassis: "M1-007" })).id;
}, 120_000);
afterAll(() => world?.close());

// A separator inside a text cannot be told from one between rows: see the last test. PostgreSQL keeps no NUL.
const text = fc
  .oneof(
    fc.string({ unit: "grapheme" }),
    fc.constantFrom("", '"', "\\", "a,b", "(x)", " ", "NULL", "5/8 in", "\n"),
  )
  .map((given) => given.replaceAll("\u0000", "").replaceAll("\u001e", ""));
const double = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(0, -0, 1e-4, 9.9e-5, 1e-5, 2.9e-5, 1e-7, 1e14, 1e15, -123456789012345680, 1e21, 5e-324),
);
const orNull = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null });

const rows = fc
  .array(
    fc.record({
      entered: text,
      number: orNull(double),
      resolution: orNull(double),
      text: orNull(text),
      sinceText: orNull(text),
      since: orNull(fc.constantFrom("1971-03-01", "2026-11-29")),
      nominalNumber: orNull(double),
      side: fc.constantFrom("whole", "left", "right"),
      verdict: fc.constantFrom("asSpecified", "outsideLimits", "notRecorded"),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((given) =>
    given.map(
      (row, index): CurrentRow => ({
        ...row,
        carId,
        characteristic: `part.${index}`,
        valueKind: "text",
        origin: "reading",
        originId: carId,
      }),
    ),
  );

/** Puts rows in the place of those the car has, and reads them as a rebuild does. */
const held = (put: readonly CurrentRow[]) =>
  openOperator(world.database, "ours", async (ctx) => {
    await ctx.db.currentValue.deleteMany({ where: { carId } });
    await insertRows(ctx.db, "currentValue", put);
    return (await heldTexts(ctx, [carId])).get(carId);
  });

describe("rows as a rebuild compares them", () => {
  test("are told to be the same, whatever stands in them", async () => {
    await fc.assert(
      fc.asyncProperty(rows, async (put) => {
        expect(rowsDiffer(await held(put), put)).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  test("are told to differ where any one cell does, or a row is lacking or left over", async () => {
    await fc.assert(
      fc.asyncProperty(rows, fc.constantFrom("entered", "text", "sinceText"), async (put, field) => {
        const [first, ...rest] = put;
        if (!first) return;
        const standing = await held(put);
        expect(rowsDiffer(standing, [{ ...first, [field]: `${first[field] ?? ""}x` }, ...rest])).toBe(true);
        expect(rowsDiffer(standing, [{ ...first, number: (first.number ?? 0) + 1e-3 }, ...rest])).toBe(
          (first.number ?? 0) + 1e-3 !== first.number,
        );
        expect(rowsDiffer(standing, rest)).toBe(true);
        expect(rowsDiffer(standing, [...put, { ...first, characteristic: "further" }])).toBe(true);
      }),
      { numRuns: 30 },
    );
  });

  test("of a car without any differ from whatever was worked out", () => {
    expect(rowsDiffer(undefined, [])).toBe(false);
  });

  test("are compared by the database where a text has what separates them", async () => {
    const [row] = fc.sample(rows, 1)[0] ?? [];
    if (!row) throw new Error("no row");
    const put = [{ ...row, entered: "a\u001eb" }];
    expect(rowsDiffer(await held(put), put)).toBe(true);
  });
});
