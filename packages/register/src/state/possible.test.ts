import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { shiftDays } from "../identity/calendar";
import { entriesFor } from "../specification/entry";
import { sampleValue } from "../value/sample";
import { type StateInput, stateOn } from "./fold";
import { doubtsOn, turningDays } from "./possible";
import type { AcceptedModification, Reading } from "./state";

const bar = "rear.antiRollBar.diameter";
const key = `${bar} whole`;
const source = { title: "Letter", trust: "stated" } as const;
const entries = entriesFor({ id: "s", version: 1, entries: [] }, { options: [] }, builtInBook);
const empty: StateInput = { entries, asBuilt: [], modifications: [], readings: [] };
const built = [
  { id: "card", characteristic: bar, side: "whole", value: sampleValue(bar, "10 mm"), source },
] as const;

interface Change {
  readonly id: string;
  readonly earliest: string;
  readonly on: string;
  readonly entered: string;
  readonly sequence?: number;
}

function modified({ id, earliest, on, entered, sequence = 1 }: Change): AcceptedModification {
  const changes = [{ characteristic: bar, side: "whole", after: sampleValue(bar, entered) }] as const;
  return { id, earliest, on, said: `${earliest} to ${on}`, sequence, changes, source };
}

function seen(id: string, on: string, entered: string, sequence = 1): Reading {
  return { id, on, sequence, characteristic: bar, side: "whole", value: sampleValue(bar, entered), source };
}

/** What the bar may have been: the value that stands, then what else it may have been. */
function possible(day: string, input: Partial<StateInput>): readonly string[] {
  const whole = { ...empty, ...input };
  const stands = stateOn(day, whole).get(key)?.value.entered ?? "?";
  const doubt = doubtsOn(day, whole).get(key);
  const others = doubt?.map(({ value }) => value.entered) ?? [];
  return [stands, ...others];
}

describe("what the dates leave open, by hand", () => {
  const in1998 = modified({ id: "M1", earliest: "1998-01-01", on: "1998-12-31", entered: "16 mm" });
  const march98 = modified({
    id: "M2",
    earliest: "1998-03-01",
    on: "1998-03-31",
    entered: "18 mm",
    sequence: 2,
  });

  test.each([
    ["1997-12-31", ["10 mm"], "the year has not begun: nothing is open"],
    ["1998-01-01", ["10 mm", "16 mm"], "it may have been fitted on New Year's Day"],
    ["1998-12-30", ["10 mm", "16 mm"], "or only tomorrow"],
    ["1998-12-31", ["16 mm"], "by the last day of the year it was"],
  ])("a bar fitted in 1998: on %s %j, for %s", (day, expected) => {
    expect(possible(day, { asBuilt: built, modifications: [in1998] })).toEqual(expected);
  });

  test.each([
    ["1998-02-01", ["10 mm", "16 mm"], "March is yet to come"],
    ["1998-03-15", ["10 mm", "16 mm", "18 mm"], "neither is sure yet"],
    ["1998-04-01", ["18 mm", "16 mm"], "March is over; the other may have come after it"],
    ["1999-01-01", ["16 mm", "18 mm"], "the state takes the later last day; either may have been the last"],
  ])("and another in March of that year: on %s %j, for %s", (day, expected) => {
    expect(possible(day, { asBuilt: built, modifications: [in1998, march98] })).toEqual(expected);
  });

  test("a reading after the year closes the question, one within it does not", () => {
    const after = seen("R1", "1999-05-01", "16 mm");
    expect(
      possible("1999-05-01", { asBuilt: built, modifications: [in1998, march98], readings: [after] }),
    ).toEqual(["16 mm"]);
    const within = seen("R1", "1998-06-01", "17 mm");
    expect(possible("1999-05-01", { asBuilt: built, modifications: [in1998], readings: [within] })).toEqual([
      "16 mm",
      "17 mm",
    ]);
  });

  test("what was there before is not known where nothing is recorded of it", () => {
    expect(possible("1998-06-01", { modifications: [in1998] })).toEqual(["?", "16 mm"]);
  });

  test("of one day, a reading comes after a modification and a later acceptance after an earlier one", () => {
    const day = "1990-05-01";
    const one = modified({ id: "A", earliest: day, on: day, entered: "16 mm", sequence: 1 });
    const two = modified({ id: "B", earliest: day, on: day, entered: "18 mm", sequence: 2 });
    expect(possible(day, { modifications: [two, one] })).toEqual(["18 mm"]);
    expect(possible(day, { modifications: [two, one], readings: [seen("R", day, "20 mm")] })).toEqual([
      "20 mm",
    ]);
  });
});

describe("by property", () => {
  const days = 7;
  const at = (index: number) => shiftDays("1990-01-01", index);
  const number = fc.integer({ min: 0, max: days - 1 });
  const size = (index: number) => `${20 + index * 2} mm`;
  const modifications = fc.array(fc.tuple(number, number), { maxLength: 4 }).map((spans) =>
    spans.map(([a, b], index) =>
      modified({
        id: `M${index}`,
        earliest: at(Math.min(a, b)),
        on: at(Math.max(a, b)),
        entered: size(index),
        sequence: index,
      }),
    ),
  );
  const readings = fc
    .array(number, { maxLength: 2 })
    .map((list) => list.map((day, index) => seen(`R${index}`, at(day), size(10 + index), index)));
  const shownDay = fc.integer({ min: 0, max: days }).map(at);

  /** Every way the days may have fallen, one by one: what the fold then gives. */
  function tried(day: string, mods: readonly AcceptedModification[], reads: readonly Reading[]): Set<string> {
    let ways: readonly (readonly AcceptedModification[])[] = [[]];
    for (const modification of mods) {
      const { earliest = "", on } = modification;
      const choices = Array.from({ length: days }, (_, index) => at(index)).filter(
        (one) => one >= earliest && one <= on,
      );
      ways = ways.flatMap((way) =>
        choices.map((one) => [...way, { ...modification, earliest: one, on: one }]),
      );
    }
    const states = ways.map((way) =>
      stateOn(day, { ...empty, asBuilt: built, modifications: way, readings: reads }),
    );
    return new Set(states.map((state) => state.get(key)?.value.entered ?? "?"));
  }

  test("it is exactly what trying every choice of days gives", () => {
    fc.assert(
      fc.property(modifications, readings, shownDay, (mods, reads, day) => {
        const found = possible(day, { asBuilt: built, modifications: mods, readings: reads });
        expect(new Set(found)).toEqual(tried(day, mods, reads));
      }),
      { numRuns: 150 },
    );
  });

  test("where every date is a day nothing is open", () => {
    fc.assert(
      fc.property(modifications, readings, shownDay, (mods, reads, day) => {
        const exact = mods.map(({ earliest: _, ...modification }) => modification);
        expect(doubtsOn(day, { ...empty, asBuilt: built, modifications: exact, readings: reads }).size).toBe(
          0,
        );
      }),
    );
  });

  test("between its turning days nothing changes, neither what stands nor what is open", () => {
    fc.assert(
      fc.property(modifications, readings, shownDay, (mods, reads, day) => {
        const input = { ...empty, asBuilt: built, modifications: mods, readings: reads };
        const turn = turningDays(input).findLast((one) => one <= day) ?? "1000-01-01";
        expect(doubtsOn(day, input)).toEqual(doubtsOn(turn, input));
        expect(stateOn(day, input)).toEqual(stateOn(turn, input));
      }),
    );
  });
});
