import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { CarBasis } from "../state/state";
import { sampleValue } from "../value/sample";
import { checkSpecification } from "./check";
import { applies, entriesFor } from "./entry";
import { outweighs } from "./overlap";
import type { Applicability, SpecificationEntry } from "./specification";

const key = "front.antiRollBar.diameter";

function entry(id: string, entered: string, applicability: Applicability = {}): SpecificationEntry {
  const source = { title: "Works manual", trust: "documented" } as const;
  return {
    id,
    characteristic: key,
    side: "whole",
    nominal: sampleValue(key, entered),
    alternatives: [],
    applicability,
    source,
  };
}

function standing(entries: readonly SpecificationEntry[], basis: CarBasis) {
  const found = entriesFor({ id: "s", version: 1, entries }, basis, builtInBook).get(`${key} whole`);
  return found === undefined ? "none" : found.undecided ? "undecided" : found.id;
}

const car = (parts: Partial<CarBasis> = {}): CarBasis => ({ options: [], ...parts });
const all = entry("all", "16 mm");
const late = entry("late", "18 mm", { serialFrom: 200 });
const band = entry("band", "19 mm", { serialFrom: 250, serialTo: 260 });
const sport = entry("sport", "20 mm", { option: "SPORT" });

describe("the entry that stands for a car", () => {
  test.each([
    [car({ serial: 199 }), "all"],
    [car({ serial: 200 }), "late"],
    [car({ serial: 255 }), "band"],
    [car({ serial: 255, options: ["SPORT"] }), "sport"],
    [car({ options: ["SPORT"] }), "sport"],
    [car(), "undecided"],
  ])("of %o is %s", (basis, expected) => {
    const entries = [all, late, band, sport];
    expect(standing(entries, basis)).toBe(expected);
    expect(standing([...entries].reverse(), basis)).toBe(expected);
  });

  test("by date is decided only where every possible day of build agrees", () => {
    const until = entry("until", "14 mm", { builtTo: "1971-06-30" });
    const from = entry("from", "16 mm", { builtFrom: "1971-07-01" });
    const built = (earliest: string, latest: string) =>
      standing([until, from], car({ built: { earliest, latest } }));
    expect(built("1971-01-01", "1971-06-30")).toBe("until");
    expect(built("1971-07-01", "1971-12-31")).toBe("from");
    expect(built("1971-01-01", "1971-12-31")).toBe("undecided");
    expect(standing([until, from], car())).toBe("undecided");
  });

  test.each([
    ["1971-01-01", "1971-12-31", "yes"],
    ["1971-01-01", "1972-01-01", "unknown"],
    ["1970-12-31", "1971-12-31", "unknown"],
    ["1972-01-01", "1972-12-31", "no"],
    ["1970-01-01", "1970-12-31", "no"],
  ])("built from %s to %s applies to the days of 1971: %s", (earliest, latest, expected) => {
    const days = { builtFrom: "1971-01-01", builtTo: "1971-12-31" };
    expect(applies(days, car({ built: { earliest, latest } }))).toBe(expected);
  });

  test("is decided although it is not known which applies, where both ask the same", () => {
    const same = entry("same", "16.0 mm", { serialFrom: 200 });
    expect(standing([all, same], car())).toBe("all");
    expect(standing([all, same], car({ serial: 201 }))).toBe("same");
  });

  test("is undecided for a car with two options that differ", () => {
    const tour = entry("tour", "14 mm", { option: "TOUR" });
    expect(standing([all, sport, tour], car({ options: ["SPORT", "TOUR"] }))).toBe("undecided");
    expect(standing([all, sport, tour], car({ options: ["TOUR"] }))).toBe("tour");
  });

  test("is none where none applies, and undecided where the only one may not", () => {
    expect(standing([late], car({ serial: 1 }))).toBe("none");
    expect(standing([late], car())).toBe("undecided");
    expect(entriesFor(undefined, car(), builtInBook).size).toBe(0);
  });

  test("speaks of both sides, unless a side has its own", () => {
    const source = { title: "Works manual", trust: "documented" } as const;
    const limits = (id: string, side: "whole" | "right", upper: number): SpecificationEntry => ({
      id,
      characteristic: "front.camber",
      side,
      limits: { upper },
      alternatives: [],
      applicability: {},
      source,
    });
    const entries = entriesFor(
      { id: "s", version: 1, entries: [limits("both", "whole", 0), limits("right", "right", 0.01)] },
      car(),
      builtInBook,
    );
    expect([...entries].map(([place, { id, side }]) => [place, id, side])).toEqual([
      ["front.camber left", "both", "left"],
      ["front.camber right", "right", "right"],
    ]);
  });

  test("that is undecided carries neither nominal nor limits", () => {
    const found = entriesFor({ id: "s", version: 1, entries: [late] }, car(), builtInBook).get(
      `${key} whole`,
    );
    expect(found).not.toHaveProperty("nominal");
    expect(found).not.toHaveProperty("limits");
  });
});

describe("by property", () => {
  const serial = fc.option(fc.integer({ min: 1, max: 12 }), { nil: undefined });
  const applicability = fc
    .record({
      serialFrom: serial,
      serialTo: serial,
      option: fc.option(fc.constantFrom("S", "T"), { nil: undefined }),
    })
    .map(
      (parts) =>
        Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== undefined)) as Applicability,
    );
  const entries = fc
    .array(fc.record({ at: applicability, entered: fc.constantFrom("14 mm", "16 mm", "18 mm") }), {
      maxLength: 5,
    })
    .map((list) => list.map(({ at, entered }, index) => entry(`e${index}`, entered, at)))
    .filter((list) => checkSpecification({ entries: list }, builtInBook).length === 0);

  test("what is decided without the serial holds for every serial there could be", () => {
    const property = fc.property(entries, fc.subarray(["S", "T"]), (list, options) => {
      const without = entriesFor({ id: "s", version: 1, entries: list }, car({ options }), builtInBook);
      for (const [place, decided] of without) {
        if (decided.undecided) continue;
        for (let number = 0; number <= 13; number += 1) {
          const known = entriesFor(
            { id: "s", version: 1, entries: list },
            car({ options, serial: number }),
            builtInBook,
          );
          expect(known.get(place)?.nominal).toEqual(decided.nominal);
        }
      }
    });
    fc.assert(property, { numRuns: 500 });
  });

  test("a specification without contradictions leaves no car of known serial and one option undecided", () => {
    const property = fc.property(
      entries,
      fc.integer({ min: 1, max: 12 }),
      fc.constantFrom("S", "T", undefined),
      (list, number, option) => {
        const basis = car({ serial: number, options: option === undefined ? [] : [option] });
        expect(standing(list, basis)).not.toBe("undecided");
      },
    );
    fc.assert(property, { numRuns: 500 });
  });

  test("no two entries outweigh each other", () => {
    fc.assert(
      fc.property(applicability, applicability, (a, b) => {
        const [one, other] = [entry("a", "16 mm", a), entry("b", "16 mm", b)];
        expect(outweighs(one, other) && outweighs(other, one)).toBe(false);
      }),
    );
  });

  test("whether an entry applies is yes or no once serial and date are known", () => {
    fc.assert(
      fc.property(applicability, fc.integer({ min: 0, max: 13 }), (at, number) => {
        expect(applies(at, car({ serial: number }))).not.toBe("unknown");
      }),
    );
  });
});
