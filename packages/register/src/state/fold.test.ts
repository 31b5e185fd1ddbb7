import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { entriesFor } from "../specification/entry";
import type { SpecificationEntry } from "../specification/specification";
import { sampleValue } from "../value/sample";
import { type StateInput, stateOn } from "./fold";
import { stateKey } from "./key";
import type { AcceptedModification, AsBuiltValue, Reading } from "./state";

const source = { title: "Works manual", trust: "documented" } as const;
const bar = "rear.antiRollBar.diameter";

function specified(characteristic: string, entered: string): SpecificationEntry {
  const nominal = sampleValue(characteristic, entered);
  const id = `spec ${characteristic}`;
  return { id, characteristic, side: "whole", nominal, alternatives: [], applicability: {}, source };
}

function entriesOf(...entries: SpecificationEntry[]) {
  return entriesFor({ id: "s", version: 1, entries }, { options: [] }, builtInBook);
}

function fitted(
  id: string,
  on: string,
  entered: string,
  sequence = 1,
  characteristic = bar,
): AcceptedModification {
  const after = sampleValue(characteristic, entered);
  return { id, on, sequence, changes: [{ characteristic, side: "whole", after }], source };
}

function camber(id: string, on: string, entered: string, side: "left" | "right" = "left"): Reading {
  const value = sampleValue("front.camber", entered);
  return { id, on, sequence: 1, characteristic: "front.camber", side, value, source };
}

const empty: StateInput = { entries: entriesOf(), asBuilt: [], modifications: [], readings: [] };

/** What stands for a characteristic on a day: the entry and where it comes from. */
function standing(
  day: string,
  input: Partial<StateInput>,
  characteristic = bar,
  side: "whole" | "left" = "whole",
) {
  const found = stateOn(day, { ...empty, ...input }).get(stateKey(characteristic, side));
  return found && `${found.value.entered}, ${found.origin} ${found.originId}`;
}

describe("a car's state, by hand", () => {
  const built: AsBuiltValue = {
    id: "card",
    characteristic: bar,
    side: "whole",
    value: sampleValue(bar, "14 mm"),
    source,
  };
  const life = {
    entries: entriesOf(specified(bar, "16 mm"), specified("body.style", "coupe")),
    asBuilt: [built],
    modifications: [
      fitted("M3", "1998-03-12", "none", 3),
      fitted("M1", "1974-05-01", "18 mm", 1),
      fitted("M2", "1998-03-12", "20 mm", 2),
    ],
  };

  test.each([
    ["1974-04-30", "14 mm, asBuilt card"],
    ["1974-05-01", "18 mm, modification M1"],
    ["1998-03-11", "18 mm, modification M1"],
    ["1998-03-12", "none, modification M3"],
    ["2026-11-25", "none, modification M3"],
  ])("on %s has a rear bar of %s", (day, expected) => {
    expect(standing(day, life)).toBe(expected);
  });

  test("is as specified where nothing else is known, and says so", () => {
    const state = stateOn("2026-11-25", { ...empty, ...life });
    expect(state.get("body.style whole")).toMatchObject({
      origin: "specification",
      originId: "spec body.style",
    });
    expect(state.get("body.style whole")).not.toHaveProperty("since");
    expect(state.size).toBe(2);
  });

  test("prefers the better trusted of two sources for what left the works", () => {
    const letter = {
      ...built,
      id: "letter",
      value: sampleValue(bar, "15 mm"),
      source: { title: "Letter", trust: "stated" },
    } as const;
    for (const asBuilt of [
      [built, letter],
      [letter, built],
    ]) {
      expect(standing("2026-11-25", { asBuilt })).toBe("14 mm, asBuilt card");
    }
  });

  test("takes the latest reading, with its uncertainty and its day", () => {
    const readings = [camber("R2", "2020-06-01", "-1.0°"), camber("R1", "2019-06-01", "-0.5°")];
    const uncertain = { ...camber("R3", "2021-06-01", "-1.2°"), expandedUncertainty: 0.003 };
    expect(standing("2020-12-31", { readings }, "front.camber", "left")).toBe("-1.0°, reading R2");
    const state = stateOn("2026-11-25", { ...empty, readings: [uncertain, ...readings] });
    expect(state.get("front.camber left")).toMatchObject({ expandedUncertainty: 0.003, since: "2021-06-01" });
    expect(state.has("front.camber right")).toBe(false);
  });

  test("lets a modification overtake the readings of the characteristic it lists, and no others", () => {
    const reset: AcceptedModification = {
      id: "M4",
      on: "2020-07-01",
      sequence: 4,
      changes: [{ characteristic: "front.camber", side: "left", after: sampleValue("front.camber", "-2°") }],
      source,
    };
    const readings = [camber("R1", "2020-06-01", "-1.0°"), camber("R2", "2020-06-01", "-1.1°", "right")];
    const input = { ...empty, modifications: [reset], readings };
    const state = stateOn("2026-11-25", input);
    expect(state.get("front.camber left")?.originId).toBe("M4");
    expect(state.get("front.camber right")?.originId).toBe("R2");
    const sameDay = stateOn("2026-11-25", { ...input, readings: [camber("R3", "2020-07-01", "-1.9°")] });
    expect(sameDay.get("front.camber left")?.originId).toBe("R3");
  });
});

describe("by property", () => {
  const day = fc.integer({ min: 0, max: 9 }).map((number) => `1990-01-0${number + 1}`.slice(0, 10));
  const size = fc.constantFrom("14 mm", "16 mm", "18 mm", "none");
  const modifications = fc
    .array(fc.record({ day, size }), { maxLength: 8 })
    .map((list) => list.map((one, index) => fitted(`M${index}`, one.day, one.size, index)));
  const readings = fc
    .array(fc.record({ day, size: fc.constantFrom("15 mm", "17 mm") }), { maxLength: 6 })
    .map((list) =>
      list.map((one, index): Reading => {
        const value = sampleValue(bar, one.size);
        return {
          id: `R${index}`,
          on: one.day,
          sequence: index,
          characteristic: bar,
          side: "whole",
          value,
          source,
        };
      }),
    );
  const shuffled = <T>(list: readonly T[]) => fc.shuffledSubarray([...list], { minLength: list.length });

  test("the order of the lists does not matter", () => {
    const life = fc.tuple(modifications, readings).chain(([mods, reads]) =>
      fc.record({
        mods: fc.constant(mods),
        reads: fc.constant(reads),
        mods2: shuffled(mods),
        reads2: shuffled(reads),
      }),
    );
    fc.assert(
      fc.property(life, day, ({ mods, reads, mods2, reads2 }, on) => {
        const one = stateOn(on, { ...empty, modifications: mods, readings: reads });
        const other = stateOn(on, { ...empty, modifications: mods2, readings: reads2 });
        expect(other).toEqual(one);
      }),
    );
  });

  test("on a day before any change the car is as built", () => {
    const asBuilt: AsBuiltValue[] = [
      { id: "card", characteristic: bar, side: "whole", value: sampleValue(bar, "14 mm"), source },
    ];
    fc.assert(
      fc.property(modifications, readings, (mods, reads) => {
        const state = stateOn("1989-12-31", { ...empty, asBuilt, modifications: mods, readings: reads });
        expect(state).toEqual(stateOn("1989-12-31", { ...empty, asBuilt }));
      }),
    );
  });

  test("what comes after the day changes nothing", () => {
    fc.assert(
      fc.property(modifications, readings, day, (mods, reads, on) => {
        const past = {
          modifications: mods.filter((one) => one.on <= on),
          readings: reads.filter((one) => one.on <= on),
        };
        const all = { modifications: mods, readings: reads };
        expect(stateOn(on, { ...empty, ...all })).toEqual(stateOn(on, { ...empty, ...past }));
      }),
    );
  });

  test("nothing in the state is younger than the day, nor older than the last modification of it", () => {
    fc.assert(
      fc.property(modifications, readings, day, (mods, reads, on) => {
        const since = stateOn(on, { ...empty, modifications: mods, readings: reads }).get(
          stateKey(bar, "whole"),
        )?.since;
        if (since === undefined) return;
        expect(since <= on).toBe(true);
        const last = mods
          .filter((one) => one.on <= on)
          .map((one) => one.on)
          .sort()
          .at(-1);
        expect(since >= (last ?? "")).toBe(true);
      }),
    );
  });
});
