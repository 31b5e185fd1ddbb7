import { describe, expect, test } from "vitest";
import { builtInBook } from "../../characteristic/book";
import type { Side } from "../../characteristic/characteristic";
import { type CarView, evaluate } from "../../condition/evaluate";
import { deviationsFromFactory } from "../../deviation/compare";
import { entriesFor } from "../../specification/entry";
import type { SpecificationEntry } from "../../specification/specification";
import { stateOn } from "../../state/fold";
import { sampleValue } from "../../value/sample";
import { checksForCar } from "../for-car";
import { starterChecks } from ".";
import { type Parts, type Trigger, triggers } from "./sample-trigger";

const source = { title: "Works manual", trust: "documented" } as const;
const eventDay = "2026-11-25";
const derived = starterChecks.filter(({ when }) => when.op !== "always");
const placeOf = (name: string) => name.split("@") as [string, Side | undefined];

function entriesOf({ specified = {}, limits = {} }: Trigger): readonly SpecificationEntry[] {
  return [...new Set([...Object.keys(specified), ...Object.keys(limits)])].map((characteristic) => {
    const entered = specified[characteristic];
    const limit = limits[characteristic];
    return {
      id: characteristic,
      characteristic,
      side: "whole",
      ...(entered === undefined ? {} : { nominal: sampleValue(characteristic, entered) }),
      ...(limit === undefined ? {} : { limits: limit }),
      alternatives: [],
      applicability: {},
      source,
    };
  });
}

function carOf(trigger: Trigger, parts: Parts, on = "2026-04-01"): CarView {
  const basis = { options: [] };
  const entries = entriesFor({ id: "s", version: 1, entries: entriesOf(trigger) }, basis, builtInBook);
  const readings = Object.entries(parts).map(([name, entered], sequence) => {
    const [characteristic, side = "whole"] = placeOf(name);
    const value = sampleValue(characteristic, entered);
    return { id: name, on, sequence, characteristic, side, value, source };
  });
  const state = stateOn(eventDay, { entries, asBuilt: [], modifications: [], readings });
  const deviations = deviationsFromFactory(state, entries, builtInBook);
  return { status: "inUse", basis, state, deviations, eventDay, book: builtInBook };
}

const found = (id: string) => {
  const check = derived.find((one) => one.id === id);
  if (check === undefined) throw new Error(`no check ${id}`);
  return check;
};

describe("checks that follow from a car", () => {
  test("each have a car they follow from and one they just do not", () => {
    expect(triggers.map(({ check }) => check).sort()).toEqual(derived.map(({ id }) => id).sort());
  });

  test.each(triggers.map((trigger) => [trigger.check, trigger] as const))(
    "%s stands on the sheet of a car that calls for it, and says why with its figure",
    (id, trigger) => {
      const [line, ...more] = checksForCar(
        [found(id)],
        carOf(trigger, trigger.has, trigger.read),
        builtInBook,
      );
      expect(more).toEqual([]);
      expect(line).toMatchObject({ check: { id }, undecided: false });
      expect(line?.why).not.toMatch(/[{}\n]/);
      expect(line?.why.length).toBeGreaterThan(10);
      // What the check is about is known of this car; only what it compares with may be left out.
      expect(line?.why.startsWith("not recorded")).toBe(false);
    },
  );

  test.each(triggers.map((trigger) => [trigger.check, trigger] as const))(
    "%s is left out, decidedly, where the car just does not call for it",
    (id, trigger) => {
      const view = carOf(trigger, trigger.hasNot, trigger.readNot ?? trigger.read);
      expect(evaluate(found(id).when, view)).toBe("no");
      expect(checksForCar([found(id)], view, builtInBook)).toEqual([]);
    },
  );
});
