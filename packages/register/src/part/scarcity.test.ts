import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shiftDays } from "../identity/calendar";
import { type PartNote, partNoteKinds } from "./part";
import { byScarcity, scarcityOf, scarcityRungs } from "./scarcity";

const today = "2026-11-29";
const note = (kind: PartNote["kind"], on: string, count?: number): PartNote => ({
  kind,
  on,
  ...(count === undefined ? {} : { count }),
});
const of = (dependentCars: number, ...notes: readonly PartNote[]) =>
  scarcityOf({ notes, dependentCars, today });

describe("how scarce a part is", () => {
  test.each([
    [
      "without notes nobody knows",
      of(40),
      "notKnown",
      "Nobody has noted finding it, or looking for it in vain.",
    ],
    [
      "a confirmed fit is no find",
      of(40, note("confirmed", "2026-11-01")),
      "notKnown",
      "Nobody has noted finding it, or looking for it in vain.",
    ],
    [
      "found this year, it is to be had",
      of(3, note("found", "2026-02-01")),
      "obtainable",
      "Last found within a year.",
    ],
    [
      "found three years ago, it gets scarce",
      of(3, note("found", "2023-06-01")),
      "thinning",
      "Last found 3 years ago.",
    ],
    [
      "found this year, and too many cars wait for each",
      of(60, note("found", "2026-02-01"), note("found", "2025-02-01")),
      "thinning",
      "Last found within a year; 30 cars depend on each one found in 5 years.",
    ],
    [
      "a find of many serves many",
      of(60, note("found", "2026-02-01", 12)),
      "obtainable",
      "Last found within a year.",
    ],
    [
      "looked for in vain since, it is scarce",
      of(3, note("found", "2025-06-01"), note("notFound", "2026-06-01")),
      "scarce",
      "Last found 1 year ago, and looked for in vain once since.",
    ],
    [
      "found eight years ago, it is scarce",
      of(3, note("found", "2018-06-01")),
      "scarce",
      "Last found 8 years ago.",
    ],
    [
      "never found and looked for on two days, it is not to be had",
      of(3, note("notFound", "2020-06-01"), note("notFound", "2026-06-01")),
      "unobtainable",
      "Never noted as found; looked for in vain on 2 days.",
    ],
    [
      "two notes of one day are one search",
      of(3, note("notFound", "2026-06-01"), note("notFound", "2026-06-01")),
      "scarce",
      "Never noted as found; looked for in vain once.",
    ],
    [
      "a find ends what was sought before",
      of(3, note("notFound", "2019-06-01"), note("notFound", "2020-06-01"), note("found", "2026-06-01")),
      "obtainable",
      "Last found within a year.",
    ],
  ])("%s", (_, scarcity, rung, because) => {
    expect(scarcity).toMatchObject({ rung, because });
  });

  test("tells the latest day of each kind of note", () => {
    const scarcity = of(
      1,
      note("confirmed", "2020-01-01"),
      note("confirmed", "2024-01-01"),
      note("doubted", "2025-01-01"),
    );
    expect(scarcity).toMatchObject({ lastConfirmed: "2024-01-01", lastDoubted: "2025-01-01" });
    expect(scarcity).not.toHaveProperty("lastFound");
  });

  const notes = fc.array(
    fc.record({
      kind: fc.constantFrom(...partNoteKinds),
      on: fc.integer({ min: -6000, max: 0 }).map((days) => shiftDays(today, days)),
    }),
    { maxLength: 8 },
  );
  test("one more search in vain today never makes it easier to find", () => {
    const order = scarcityRungs.filter((rung) => rung !== "notKnown");
    fc.assert(
      fc.property(notes, fc.nat(400), (all, cars) => {
        const before = of(cars, ...all);
        const after = of(cars, ...all, note("notFound", today));
        fc.pre(before.rung !== "notKnown" && before.lastFound !== today);
        expect(order.indexOf(after.rung as never)).toBeLessThanOrEqual(order.indexOf(before.rung as never));
      }),
    );
  });

  test("the list begins with what is not to be had, and there with what most cars need", () => {
    const list = [
      of(1, note("found", "2026-02-01")),
      of(9, note("found", "2015-01-01")),
      of(40, note("found", "2015-01-01")),
    ];
    expect([...list].sort(byScarcity).map(({ rung, dependentCars }) => [rung, dependentCars])).toEqual([
      ["scarce", 40],
      ["scarce", 9],
      ["obtainable", 1],
    ]);
  });
});
