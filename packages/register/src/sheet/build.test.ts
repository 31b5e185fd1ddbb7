import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import type { Check } from "../check/check";
import { starterChecks } from "../check/starter";
import { deviationsFromFactory } from "../deviation/compare";
import { entriesFor } from "../specification/entry";
import type { Specification, SpecificationEntry } from "../specification/specification";
import { stateOn } from "../state/fold";
import { parseLimit, parseValue } from "../value/parse";
import type { Value } from "../value/value";
import { buildSheet } from "./build";

const source = { title: "Works manual", trust: "documented" } as const;

function value(key: string, entered: string): Value {
  const characteristic = builtInBook.find(key);
  if (!characteristic) throw new Error(`no characteristic ${key}`);
  const parsed = parseValue(characteristic, entered);
  if (!parsed.ok) throw new Error(parsed.problem.message);
  return parsed.value;
}

function limit(key: string, entered: string): number {
  const characteristic = builtInBook.find(key);
  const parsed = characteristic && parseLimit(characteristic, entered);
  if (!parsed?.ok) throw new Error(`no limit ${entered}`);
  return parsed.si;
}

const entry = (
  characteristic: string,
  nominal: string,
  more: Partial<SpecificationEntry> = {},
): SpecificationEntry => ({
  id: characteristic,
  characteristic,
  side: "whole",
  nominal: value(characteristic, nominal),
  alternatives: [],
  applicability: {},
  source,
  ...more,
});

/** A car worked by hand: five characteristics differ, one is as specified, one inside its limits, one not recorded. */
const specification: Specification = {
  id: "s",
  version: 1,
  entries: [
    entry("front.antiRollBar.diameter", "16 mm"),
    entry("rear.antiRollBar.diameter", "not fitted"),
    entry("rear.dropLink.joint", "rubber bush"),
    entry("front.disc.diameter", "9 1/2 in"),
    entry("front.spring.rate", "95 lb/in"),
    entry("wheels.front.size", "5J x 13"),
    entry("front.camber", "0°", {
      limits: { lower: limit("front.camber", "-0°30'"), upper: limit("front.camber", "0°30'") },
    }),
    entry("front.castor", "3°30'", {
      limits: { lower: limit("front.castor", "3°"), upper: limit("front.castor", "4°") },
    }),
  ],
};

const seen = (
  characteristic: string,
  entered: string,
  side: Side = "whole",
  expandedUncertainty?: number,
) => ({
  id: `${characteristic} ${side}`,
  on: "2026-05-02",
  sequence: 1,
  characteristic,
  side,
  value: value(characteristic, entered),
  source,
  ...(expandedUncertainty === undefined ? {} : { expandedUncertainty }),
});

const minute = Math.PI / 180 / 60;
const readings = [
  seen("front.antiRollBar.diameter", "20 mm"),
  seen("rear.antiRollBar.diameter", "5/8 in"),
  seen("rear.dropLink.joint", "rod end"),
  seen("front.disc.diameter", "9 1/2 in"),
  seen("front.camber", "-1°15'", "left", 6 * minute),
  seen("front.camber", "-0°10'", "right", 6 * minute),
  seen("front.castor", "3°02'", "left", 6 * minute),
  seen("front.castor", "3°30'", "right", 6 * minute),
  seen("wheels.front.size", "5J x 13"),
];

function sheet(car: boolean, checks: readonly Check[] = starterChecks) {
  const basis = { options: [] };
  const entries = entriesFor(specification, basis, builtInBook);
  const state = stateOn("2026-12-05", { entries, asBuilt: [], modifications: [], readings });
  const deviations = deviationsFromFactory(state, entries, builtInBook);
  const facts = { chassis: "S2-0211", built: "3/72", status: "inUse", series: null, identities: [] };
  return buildSheet({
    club: { name: "Sandvær Register", unitSystem: "metric" },
    event: { name: "Track day", on: "2026-12-05", venue: "Kvitnes ring", ruleSet: "Starter" },
    entry: {
      runningNumber: "7",
      group: "A",
      className: "C Open",
      driver: "Åse",
      describedAs: "a visitor's car",
    },
    checks,
    book: builtInBook,
    recordHash: "0".repeat(64),
    preparedAt: "2026-11-25T12:00:00.000Z",
    ...(car ? { car: { ...facts, basis, state, deviations } } : {}),
  });
}

const checkIds = (model: ReturnType<typeof sheet>) =>
  model.stations.flatMap(({ checks }) => checks.map(({ id }) => id));

describe("the sheet of a car worked by hand", () => {
  const model = sheet(true);

  test("tells every characteristic that deviates, and nothing else", () => {
    const told = model.deviations.map(({ label, side, verdict }) => [label, side, verdict]);
    expect(told).toEqual([
      ["Front camber", "left", "outsideLimits"],
      ["Rear anti-roll bar diameter", undefined, "added"],
      ["Front anti-roll bar diameter", undefined, "differentPart"],
      ["Rear drop link joint", undefined, "differentPart"],
      ["Front castor", "left", "cannotTell"],
    ]);
  });

  test("says by how much, since when, and where on the plan", () => {
    const bar = model.deviations.find(({ label }) => label === "Front anti-roll bar diameter");
    expect(bar).toMatchObject({
      specified: "16 mm",
      actual: "20 mm",
      difference: "+4 mm, × 1.25",
      since: "2 May 2026",
      leader: 1,
    });
  });

  test("says how many characteristics nothing is known of", () => {
    expect(model.notRecorded).toBe(1);
  });

  test("shows the settings with their limits on both sides, in the unit they were specified in", () => {
    expect(model.settings.map(({ label, limits }) => [label, limits])).toEqual([
      ["Front camber", "−0°30' to 0°30'"],
      ["Front castor", "3°00' to 4°00'"],
    ]);
    expect(model.settings[0]?.left).toMatchObject({ text: "−1°15'", verdictText: "outside limits" });
    expect(model.settings[0]?.right).toMatchObject({ text: "−0°10'", verdictText: "inside limits" });
  });

  test("asks for what follows from the car, each with its figures", () => {
    const why = (id: string) =>
      model.stations.flatMap(({ checks }) => checks).find((check) => check.id === id)?.why;
    expect(why("front-bar-thicker")).toBe(
      "20 mm where 16 mm was specified: about × 2.4 as stiff, if both are solid and of one shape",
    );
    expect(why("rear-bar-added")).toContain("5/8 in fitted");
    expect(why("rear-link-rod-ends")).toBe("drop link joint rod end, specified rubber bush");
    expect(why("front-camber")).toContain("left −1°15', right −0°10'");
  });

  test("does not ask for what just does not follow", () => {
    const ids = checkIds(model);
    expect(ids).not.toContain("front-link-rod-ends");
    expect(ids).not.toContain("front-wheel-changed");
    expect(ids).not.toContain("disc-diameter-changed");
    expect(ids).not.toContain("front-bar-left-off");
  });

  test("words a check as the rule set does for print, and puts what follows from the car before what every car gets", () => {
    const front = model.stations.find(({ station }) => station === "front")?.checks ?? [];
    expect(front.find(({ id }) => id === "front-bar-thicker")).toMatchObject({
      short: "Front anti-roll bar: mounts tight, brackets not cracked",
      wanted: "",
    });
    const kinds = front.map(({ special, undecided }) => (undecided ? "open" : special ? "car" : "every"));
    expect(kinds).toEqual(
      [...kinds].sort((a, b) => ["car", "every", "open"].indexOf(a) - ["car", "every", "open"].indexOf(b)),
    );
    expect(new Set(kinds)).toEqual(new Set(["car", "every", "open"]));
  });

  test("prints text and criterion of a check that the rule set does not word for print", () => {
    const { short: _short, ...long } = starterChecks.find(({ id }) => id === "wheel-nuts") ?? {};
    const [station] = sheet(true, [long as Check]).stations;
    expect(station?.checks[0]).toMatchObject({
      short: "Wheel nuts all there, tight, thread fully engaged",
      wanted: "at least one stud diameter of thread is engaged",
    });
  });

  test("leaves nothing out silently: what could not be decided is gathered to be looked at", () => {
    const front = model.stations.find(({ station }) => station === "front");
    const gathered = front?.checks.find(({ undecided }) => undecided);
    expect(gathered?.text).toContain("Front drop link joint");
    expect(gathered?.text).toContain("Front spring rate");
    expect(gathered?.text).not.toContain("Front camber");
  });
});

describe("the sheet of a car that is not on the register", () => {
  const model = sheet(false);

  test("has the checks every car gets, and no others", () => {
    const always = starterChecks.filter(({ when }) => when.op === "always").map(({ id }) => id);
    expect(new Set(checkIds(model))).toEqual(new Set(always));
  });

  test("says what the entry list said of it, and that it is not on the register", () => {
    expect(model.car).toMatchObject({ series: "a visitor's car", onRegister: false });
  });
});
