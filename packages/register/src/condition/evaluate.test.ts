import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import { deviationsFromFactory } from "../deviation/compare";
import type { Verdict } from "../deviation/deviation";
import { entriesFor } from "../specification/entry";
import type { SpecificationEntry } from "../specification/specification";
import { stateOn } from "../state/fold";
import type { AcceptedModification, CarBasis, Reading } from "../state/state";
import { sampleValue } from "../value/sample";
import type { Condition, Truth } from "./condition";
import { allOf, anyOf, type CarView, evaluate, negated } from "./evaluate";

const source = { title: "Works manual", trust: "documented" } as const;
const bar = "rear.antiRollBar.diameter";
const degree = Math.PI / 180;

function changed(characteristic: string, entered: string, side: Side = "whole"): AcceptedModification {
  const changes = [{ characteristic, side, after: sampleValue(characteristic, entered) }];
  return { id: `M ${characteristic} ${side}`, on: "1998-03-12", sequence: 1, changes, source };
}

function read(characteristic: string, entered: string, side: Side, on = "2026-04-01"): Reading {
  const value = sampleValue(characteristic, entered);
  return { id: `R ${characteristic} ${side}`, on, sequence: 1, characteristic, side, value, source };
}

interface Car {
  readonly specified?: Readonly<Record<string, string>>;
  readonly modifications?: readonly AcceptedModification[];
  readonly readings?: readonly Reading[];
  readonly basis?: CarBasis;
  readonly status?: string;
  readonly seriesSlug?: string;
}

function viewOf(car: Car = {}): CarView {
  const {
    specified = {},
    modifications = [],
    readings = [],
    basis = { options: [] },
    status = "inUse",
  } = car;
  const entries = Object.entries(specified).map(([characteristic, entered]): SpecificationEntry => {
    const nominal = sampleValue(characteristic, entered);
    return {
      id: characteristic,
      characteristic,
      side: "whole",
      nominal,
      alternatives: [],
      applicability: {},
      source,
    };
  });
  const chosen = entriesFor({ id: "s", version: 1, entries }, basis, builtInBook);
  const state = stateOn("2026-11-25", { entries: chosen, asBuilt: [], modifications, readings });
  const deviations = deviationsFromFactory(state, chosen, builtInBook);
  const series = car.seriesSlug === undefined ? {} : { seriesSlug: car.seriesSlug };
  return { status, basis, state, deviations, eventDay: "2026-11-25", book: builtInBook, ...series };
}

const truth = (condition: Condition, car: Car = {}) => evaluate(condition, viewOf(car));
const barIs = (is: "lt" | "gt" | "eq" | "ne", si: number): Condition => ({
  op: "number",
  characteristic: bar,
  is,
  si,
});

describe("a condition over a value", () => {
  const twenty = { modifications: [changed(bar, "20 mm")] };

  test("holds, or does not, where the value is recorded", () => {
    expect(truth(barIs("gt", 0.016), twenty)).toBe("yes");
    expect(truth(barIs("lt", 0.016), twenty)).toBe("no");
    expect(truth(barIs("ne", 0.02), twenty)).toBe("no");
  });

  test("is unknown where only the specification says it, and where nothing does", () => {
    expect(truth(barIs("gt", 0.01), { specified: { [bar]: "16 mm" } })).toBe("unknown");
    expect(truth(barIs("gt", 0.01))).toBe("unknown");
    expect(truth({ op: "not", of: barIs("gt", 0.01) })).toBe("unknown");
  });

  test("of recorded is always decided", () => {
    const recorded: Condition = { op: "recorded", characteristic: bar };
    expect(truth(recorded, { specified: { [bar]: "16 mm" } })).toBe("no");
    expect(truth(recorded, twenty)).toBe("yes");
  });

  test("of absence is no for a part that is there and yes for one left off", () => {
    const absent: Condition = { op: "absent", characteristic: bar };
    expect(truth(absent, twenty)).toBe("no");
    expect(truth(absent, { modifications: [changed(bar, "none")] })).toBe("yes");
    expect(truth(absent)).toBe("unknown");
  });

  test("without a side means either side", () => {
    const steep: Condition = { op: "number", characteristic: "front.camber", is: "lt", si: -1.5 * degree };
    const readings = [read("front.camber", "-1°", "left"), read("front.camber", "-2°", "right")];
    expect(truth(steep, { readings })).toBe("yes");
    expect(truth({ ...steep, side: "left" }, { readings })).toBe("no");
    expect(truth({ ...steep, side: "left" }, { readings: readings.slice(1) })).toBe("unknown");
  });

  test("of a code takes choices and designations", () => {
    const joint: Condition = {
      op: "code",
      characteristic: "rear.dropLink.joint",
      in: ["rodEnd", "ballJoint"],
    };
    expect(truth(joint, { modifications: [changed("rear.dropLink.joint", "rod ends")] })).toBe("yes");
    expect(truth(joint, { modifications: [changed("rear.dropLink.joint", "rubber bush")] })).toBe("no");
    const thread: Condition = { op: "code", characteristic: "wheels.stud.thread", in: ["M12x1.5"] };
    expect(truth(thread, { modifications: [changed("wheels.stud.thread", "m12 x 1.5")] })).toBe("yes");
  });

  test("of a text ignores capitals and accents", () => {
    const has: Condition = { op: "textHas", characteristic: "front.caliper.source", text: "ALLOY" };
    expect(truth(has, { modifications: [changed("front.caliper.source", "Alloy four-pot, kit 12")] })).toBe(
      "yes",
    );
    expect(truth(has)).toBe("unknown");
  });

  test("of a date compares with the day of the event", () => {
    const due: Condition = {
      op: "date",
      characteristic: "safety.harness.expires",
      is: "lt",
      date: "eventDay",
    };
    expect(truth(due, { modifications: [changed("safety.harness.expires", "2025")] })).toBe("yes");
    expect(truth(due, { modifications: [changed("safety.harness.expires", "25.11.2026")] })).toBe("no");
    expect(truth(due)).toBe("unknown");
  });
});

describe("a condition over deviations, sides and readings", () => {
  test("of a verdict takes not recorded as unknown, unless that is asked for", () => {
    const other: Condition = { op: "verdict", characteristic: bar, in: ["differentPart"] };
    const specified = { [bar]: "16 mm" };
    expect(truth(other, { specified, modifications: [changed(bar, "20 mm")] })).toBe("yes");
    expect(truth(other, { specified, modifications: [changed(bar, "16 mm")] })).toBe("no");
    expect(truth(other, { specified })).toBe("unknown");
    expect(truth({ ...other, in: ["notRecorded"] }, { specified })).toBe("yes");
  });

  test("of a verdict on any side is unknown while a side is not recorded and the other does not decide it", () => {
    const specified = { "front.camber": "0°" };
    const left = changed("front.camber", "0°", "left");
    const as = (wanted: Verdict): Extract<Condition, { readonly op: "verdict" }> => ({
      op: "verdict",
      characteristic: "front.camber",
      in: [wanted],
    });
    const both = [left, changed("front.camber", "-1°", "right")];
    expect(truth(as("cannotTell"), { specified, modifications: [left] })).toBe("unknown");
    expect(truth(as("asSpecified"), { specified, modifications: [left] })).toBe("yes");
    expect(truth(as("notRecorded"), { specified, modifications: [left] })).toBe("yes");
    expect(truth(as("cannotTell"), { specified, modifications: both })).toBe("yes");
    expect(truth(as("missing"), { specified, modifications: both })).toBe("no");
    expect(truth(as("notRecorded"), { specified, modifications: both })).toBe("no");
    expect(truth({ ...as("cannotTell"), side: "left" }, { specified, modifications: [left] })).toBe("no");
  });
  test("against nominal compares ratio and difference", () => {
    const stiffer: Condition = { op: "against", characteristic: bar, measure: "ratio", is: "ge", si: 1.2 };
    const specified = { [bar]: "16 mm" };
    expect(truth(stiffer, { specified, modifications: [changed(bar, "20 mm")] })).toBe("yes");
    expect(truth(stiffer, { specified, modifications: [changed(bar, "18 mm")] })).toBe("no");
    expect(truth(stiffer, { specified, modifications: [changed(bar, "none")] })).toBe("unknown");
    expect(truth(stiffer, { specified })).toBe("unknown");
    expect(truth(stiffer, { modifications: [changed(bar, "20 mm")] })).toBe("unknown");
  });

  test("of sides that differ needs both", () => {
    const differ: Condition = { op: "sidesDiffer", characteristic: "front.camber", by: 0.5 * degree };
    const left = read("front.camber", "-1°", "left");
    expect(truth(differ, { readings: [left, read("front.camber", "-1.6°", "right")] })).toBe("yes");
    expect(truth(differ, { readings: [left, read("front.camber", "-1.4°", "right")] })).toBe("no");
    expect(truth(differ, { readings: [left] })).toBe("unknown");
  });

  test("of a reading's age counts days to the event, and is unknown without a reading", () => {
    const old = (days: number): Condition => ({
      op: "readingOlderThan",
      characteristic: "front.camber",
      days,
    });
    const readings = [read("front.camber", "-1°", "left", "2025-11-25")];
    expect(truth(old(364), { readings })).toBe("yes");
    expect(truth(old(365), { readings })).toBe("no");
    expect(truth(old(1))).toBe("unknown");
    expect(truth(old(1), { modifications: [changed("front.camber", "-1°", "left")] })).toBe("unknown");
  });
});

describe("a condition over the car", () => {
  test("of series and status is unknown where they are not settled", () => {
    const series: Condition = { op: "series", in: ["series-2", "series-3"] };
    expect(truth(series, { seriesSlug: "series-2" })).toBe("yes");
    expect(truth(series, { seriesSlug: "series-1" })).toBe("no");
    expect(truth(series)).toBe("unknown");
    expect(truth({ op: "status", in: ["inUse"] }, { status: "laidUp" })).toBe("no");
    expect(truth({ op: "status", in: ["inUse"] }, { status: "unknown" })).toBe("unknown");
  });

  test.each([
    ["1971-01-01", "1971-12-31", "yes"],
    ["1972-01-01", "1972-12-31", "no"],
    ["1970-06-01", "1971-06-30", "unknown"],
  ])("built between %s and %s lies within 1971: %s", (earliest, latest, expected) => {
    const built: Condition = { op: "built", from: "1971-01-01", to: "1971-12-31" };
    expect(truth(built, { basis: { options: [], built: { earliest, latest } } })).toBe(expected);
    expect(truth(built)).toBe("unknown");
  });
});

describe("what is asked of the record as a whole", () => {
  const outside: Condition = { op: "anyVerdict", in: ["outsideLimits", "differentPart"] };

  test("is unknown of verdicts where nothing was compared, and decided once something was", () => {
    expect(truth(outside)).toBe("unknown");
    expect(truth(outside, { specified: { [bar]: "16 mm" } })).toBe("unknown");
    const same = { specified: { [bar]: "16 mm" }, readings: [read(bar, "16 mm", "whole")] };
    expect(truth(outside, same)).toBe("no");
    expect(truth(outside, { ...same, modifications: [changed(bar, "20 mm")], readings: [] })).toBe("yes");
  });

  test("says which assembly was modified, by what the characteristic belongs to", () => {
    const car = { modifications: [changed(bar, "20 mm")] };
    expect(truth({ op: "modified", in: ["rearSuspension"] }, car)).toBe("yes");
    expect(truth({ op: "modified", in: ["brakes", "frontSuspension"] }, car)).toBe("no");
    expect(
      truth({ op: "modified", in: ["rearSuspension"] }, { readings: [read(bar, "20 mm", "whole")] }),
    ).toBe("no");
  });

  test.each<[Condition, Car, Truth]>([
    [{ op: "known", what: "series" }, {}, "no"],
    [{ op: "known", what: "series" }, { seriesSlug: "series-2" }, "yes"],
    [{ op: "known", what: "status" }, { status: "unknown" }, "no"],
    [{ op: "known", what: "status" }, { status: "laidUp" }, "yes"],
    [{ op: "known", what: "decade" }, {}, "no"],
    [
      { op: "known", what: "decade" },
      { basis: { options: [], built: { earliest: "1969-01-01", latest: "1970-12-31" } } },
      "no",
    ],
    [
      { op: "known", what: "decade" },
      { basis: { options: [], built: { earliest: "1970-01-01", latest: "1979-12-31" } } },
      "yes",
    ],
  ])("%j is always decided", (condition, car, expected) => {
    expect(truth(condition, car)).toBe(expected);
  });
});

describe("three-valued logic", () => {
  const any = fc.constantFrom<Truth>("yes", "no", "unknown");

  // Kleene's strong tables (Kleene, Introduction to Metamathematics, §64).
  test.each([
    ["yes", "unknown", "unknown", "yes"],
    ["no", "unknown", "no", "unknown"],
    ["unknown", "unknown", "unknown", "unknown"],
    ["yes", "no", "no", "yes"],
  ] as const)("%s and %s is %s, or is %s", (a, b, and, or) => {
    expect(allOf([a, b])).toBe(and);
    expect(anyOf([a, b])).toBe(or);
  });

  test("is commutative, associative, absorbing, and obeys De Morgan", () => {
    fc.assert(
      fc.property(any, any, any, (a, b, c) => {
        expect(allOf([a, b])).toBe(allOf([b, a]));
        expect(allOf([a, allOf([b, c])])).toBe(allOf([allOf([a, b]), c]));
        expect(anyOf([a, anyOf([b, c])])).toBe(anyOf([anyOf([a, b]), c]));
        expect(allOf([a, anyOf([a, b])])).toBe(a);
        expect(negated(allOf([a, b]))).toBe(anyOf([negated(a), negated(b)]));
        expect(allOf([a, anyOf([b, c])])).toBe(anyOf([allOf([a, b]), allOf([a, c])]));
        expect(negated(negated(a))).toBe(a);
      }),
    );
  });

  const leaf = fc.constantFrom<Condition>(
    { op: "always" },
    barIs("gt", 0.017),
    { op: "absent", characteristic: bar },
    { op: "code", characteristic: "rear.dropLink.joint", in: ["rodEnd"] },
    { op: "series", in: ["series-2"] },
    { op: "verdict", characteristic: bar, in: ["differentPart", "missing"] },
    { op: "built", from: "1971-01-01" },
  );
  const condition = fc.letrec<{ readonly node: Condition }>((tie) => ({
    node: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      leaf,
      fc.array(tie("node"), { minLength: 1, maxLength: 3 }).map((of) => ({ op: "all" as const, of })),
      fc.array(tie("node"), { minLength: 1, maxLength: 3 }).map((of) => ({ op: "any" as const, of })),
      tie("node").map((of) => ({ op: "not" as const, of })),
    ),
  })).node;

  test("learning more never turns yes into no or back, where `recorded` is not asked", () => {
    const known: readonly Car[] = [
      { modifications: [changed(bar, "20 mm")] },
      { modifications: [changed(bar, "none")], seriesSlug: "series-2" },
      { modifications: [changed("rear.dropLink.joint", "rod ends")], seriesSlug: "series-1" },
      { basis: { options: [], built: { earliest: "1971-02-01", latest: "1971-02-28" } } },
    ];
    const ignorant = viewOf({ specified: { [bar]: "16 mm" } });
    fc.assert(
      fc.property(condition, fc.constantFrom(...known), (of, car) => {
        const before = evaluate(of, ignorant);
        if (before !== "unknown")
          expect(evaluate(of, viewOf({ specified: { [bar]: "16 mm" }, ...car }))).toBe(before);
      }),
      { numRuns: 300 },
    );
  });
});
