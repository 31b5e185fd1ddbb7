import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import { entriesFor } from "../specification/entry";
import type {
  Alternative,
  AlternativeRole,
  Limits,
  SpecificationEntry,
} from "../specification/specification";
import { stateOn } from "../state/fold";
import type { AcceptedModification, AsBuiltValue, CarBasis, Reading } from "../state/state";
import { sampleCharacteristic, sampleValue } from "../value/sample";
import { deviating, deviationsFromAsBuilt, deviationsFromFactory, uncertaintyOf } from "./compare";
import { verdicts } from "./deviation";
import { deviationLine } from "./line";
import { sayDeviation } from "./say";

const source = { title: "Works manual", trust: "documented" } as const;
const minute = Math.PI / 10_800;
const degree = Math.PI / 180;

interface Wanted {
  readonly nominal?: string;
  readonly limits?: Limits;
  readonly alternatives?: readonly (readonly [AlternativeRole, string])[];
  readonly applicability?: SpecificationEntry["applicability"];
}

function specified(characteristic: string, wanted: Wanted): SpecificationEntry {
  const alternatives = (wanted.alternatives ?? []).map(
    ([role, entered]): Alternative => ({ role, value: sampleValue(characteristic, entered), source }),
  );
  return {
    id: characteristic,
    characteristic,
    side: "whole",
    ...(wanted.nominal === undefined ? {} : { nominal: sampleValue(characteristic, wanted.nominal) }),
    ...(wanted.limits === undefined ? {} : { limits: wanted.limits }),
    alternatives,
    applicability: wanted.applicability ?? {},
    source,
  };
}

function changed(characteristic: string, entered: string, side: Side = "whole"): AcceptedModification {
  const changes = [{ characteristic, side, after: sampleValue(characteristic, entered) }];
  return { id: `M ${characteristic}`, on: "1998-03-12", sequence: 1, changes, source };
}

function read(characteristic: string, entered: string, side: Side, expandedUncertainty?: number): Reading {
  const value = sampleValue(characteristic, entered);
  const known = expandedUncertainty === undefined ? {} : { expandedUncertainty };
  return {
    id: `R ${characteristic}`,
    on: "2026-04-01",
    sequence: 1,
    characteristic,
    side,
    value,
    source,
    ...known,
  };
}

interface Car {
  readonly entries?: readonly SpecificationEntry[];
  readonly asBuilt?: readonly AsBuiltValue[];
  readonly modifications?: readonly AcceptedModification[];
  readonly readings?: readonly Reading[];
  readonly basis?: CarBasis;
}

function compared({
  entries = [],
  asBuilt = [],
  modifications = [],
  readings = [],
  basis = { options: [] },
}: Car) {
  const chosen = entriesFor({ id: "s", version: 1, entries }, basis, builtInBook);
  const state = stateOn("2026-11-25", { entries: chosen, asBuilt, modifications, readings });
  return {
    factory: deviationsFromFactory(state, chosen, builtInBook),
    built: deviationsFromAsBuilt(state, asBuilt, builtInBook),
  };
}

const told = (car: Car) =>
  compared(car).factory.map((one) => `${one.characteristic} ${one.side}: ${one.verdict}`);
const said = (car: Car) =>
  deviating(compared(car).factory).map((one) => sayDeviation(one, builtInBook, "metric"));

const bar = "rear.antiRollBar.diameter";

describe("a part against factory", () => {
  const wanted = {
    nominal: "16 mm",
    alternatives: [
      ["periodOption", "18 mm"],
      ["serviceReplacement", "17 mm"],
    ],
  } as const;

  test.each([
    ["16.0 mm", "asSpecified"],
    ["5/8 in", "asSpecified"],
    ["18 mm", "periodOption"],
    ["17 mm", "acceptedSubstitute"],
    ["20 mm", "differentPart"],
    ["none", "missing"],
  ])("of 16 mm, a bar of %s is %s", (entered, verdict) => {
    expect(told({ entries: [specified(bar, wanted)], modifications: [changed(bar, entered)] })).toEqual([
      `${bar} whole: ${verdict}`,
    ]);
  });

  test("keeps the role of an alternative beside the verdict", () => {
    const [one] = compared({
      entries: [specified(bar, wanted)],
      modifications: [changed(bar, "17 mm")],
    }).factory;
    expect(one?.alternative?.role).toBe("serviceReplacement");
  });

  test("of which nothing is known beyond the specification is not recorded: assumed, never a pass", () => {
    expect(told({ entries: [specified(bar, wanted)] })).toEqual([`${bar} whole: notRecorded`]);
    expect(deviating(compared({ entries: [specified(bar, wanted)] }).factory)).toEqual([]);
  });

  test("is added where none was specified, or where nothing was said of a part that can be left off", () => {
    const modifications = [changed(bar, "20 mm")];
    expect(told({ entries: [specified(bar, { nominal: "none" })], modifications })).toEqual([
      `${bar} whole: added`,
    ]);
    expect(told({ modifications })).toEqual([`${bar} whole: added`]);
    expect(told({ modifications: [changed(bar, "none")] })).toEqual([`${bar} whole: asSpecified`]);
  });

  test("is not told where the specification is silent on what every car has", () => {
    expect(told({ modifications: [changed("body.colour", "Skagen blue")] })).toEqual([]);
    expect(told({ readings: [read("front.antiRollBar.position", "2", "left")] })).toEqual([]);
  });

  test("cannot be told where it is not known which entry holds for the car", () => {
    const entries = [specified(bar, { nominal: "16 mm", applicability: { serialFrom: 200 } })];
    expect(told({ entries, modifications: [changed(bar, "16 mm")] })).toEqual([`${bar} whole: cannotTell`]);
  });
});

describe("a measured value against limits, by ISO 14253-1", () => {
  const camber = "front.camber";
  const limits = { lower: -1.5 * degree, upper: -0.5 * degree };
  const verdictOf = (entered: string, expandedUncertainty?: number) =>
    compared({
      entries: [specified(camber, { nominal: "-1°", limits })],
      readings: [read(camber, entered, "left", expandedUncertainty)],
    }).factory.find(({ side }) => side === "left")?.verdict;

  // U = 6' by hand: proven inside from -1°24' to -0°36', proven outside below -1°36' and above -0°24'.
  test.each([
    ["-1°0'", "insideLimits"],
    ["-1°24'", "insideLimits"],
    ["-1°25'", "cannotTell"],
    ["-1°36'", "cannotTell"],
    ["-1°37'", "outsideLimits"],
    ["-0°36'", "insideLimits"],
    ["-0°30'", "cannotTell"],
    ["-0°23'", "outsideLimits"],
  ])("%s ± 6' within -1°30' to -0°30' is %s", (entered, verdict) => {
    expect(verdictOf(entered, 6 * minute)).toBe(verdict);
  });

  test("without a stated uncertainty takes the least the notation implies, 2 · step / √12", () => {
    // 1' → 0.577': -1°30' lies on the limit itself, so it cannot be told; one step further in is proven.
    expect(verdictOf("-1°30'")).toBe("cannotTell");
    expect(verdictOf("-1°29'")).toBe("insideLimits");
    expect(verdictOf("-1°31'")).toBe("outsideLimits");
    // A whole degree of step: -1° ± 35' reaches past both limits.
    expect(verdictOf("-1°")).toBe("cannotTell");
  });

  test("does not pass for agreeing with the nominal alone", () => {
    expect(verdictOf("-1°0'", 40 * minute)).toBe("cannotTell");
  });

  test("carries an uncertainty also where it came with a modification; a part's size carries none", () => {
    const value = sampleValue(camber, "-1°");
    const state = { characteristic: camber, side: "left", value, originId: "M", source } as const;
    expect(uncertaintyOf({ ...state, origin: "modification" }, sampleCharacteristic(camber))).toBeCloseTo(
      (2 * degree) / Math.sqrt(12),
      12,
    );
    const size = { ...state, characteristic: bar, side: "whole", value: sampleValue(bar, "16 mm") } as const;
    expect(uncertaintyOf({ ...size, origin: "modification" }, sampleCharacteristic(bar))).toBe(0);
    expect(uncertaintyOf({ ...size, origin: "reading" }, sampleCharacteristic(bar))).toBeGreaterThan(0);
  });

  test("with a nominal but no limits has no measure: alike is as specified, else it cannot be told", () => {
    const entries = [specified("front.toe", { nominal: "10' toe-in per side" })];
    const verdict = (entered: string) =>
      compared({ entries, readings: [read("front.toe", entered, "left")] }).factory.find(
        ({ side }) => side === "left",
      )?.verdict;
    expect(verdict("20' toe-in total")).toBe("asSpecified");
    expect(verdict("5' toe-out per side")).toBe("cannotTell");
  });

  test("more uncertainty never turns a doubt into a proof, nor one proof into the other", () => {
    const property = fc.property(
      fc.integer({ min: -150, max: 30 }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      (minutes, one, more) => {
        const sign = minutes < 0 ? "-" : "";
        const entered = `${sign}0°${Math.abs(minutes) % 60}'`.replace(
          "0°",
          `${Math.floor(Math.abs(minutes) / 60)}°`,
        );
        const narrow = verdictOf(entered, one * minute);
        const wide = verdictOf(entered, (one + more) * minute);
        expect([narrow, "cannotTell"]).toContain(wide);
      },
    );
    fc.assert(property, { numRuns: 150 });
  });
});

describe("a car worked by hand", () => {
  const car: Car = {
    entries: [
      specified("front.antiRollBar.diameter", { nominal: "9/16 in" }),
      specified(bar, { nominal: "16 mm" }),
      specified("rear.dropLink.joint", { nominal: "rubber bush" }),
      specified("wheels.front.size", { nominal: "5J x 13", alternatives: [["periodOption", "5½J x 13"]] }),
      specified("brakes.servo", { nominal: "2.2" }),
      specified("body.style", { nominal: "coupe" }),
      specified("front.camber", { limits: { lower: -1 * degree, upper: 0 } }),
    ],
    asBuilt: [
      {
        id: "card",
        characteristic: "body.style",
        side: "whole",
        value: sampleValue("body.style", "coupe"),
        source,
      },
      { id: "card 2", characteristic: bar, side: "whole", value: sampleValue(bar, "16 mm"), source },
    ],
    modifications: [
      changed(bar, "20 mm"),
      changed("rear.dropLink.joint", "rod ends"),
      changed("wheels.front.size", "5.5J x 13"),
      changed("brakes.servo", "removed"),
      changed("oil.cooler", "front"),
    ],
    readings: [
      read("front.camber", "-2°0'", "left", 5 * minute),
      read("front.camber", "-0°30'", "right", 5 * minute),
    ],
  };

  test("has these deviations, worst first, and no others", () => {
    expect(told(car)).toEqual([
      "front.camber left: outsideLimits",
      "brakes.servo whole: missing",
      "oil.cooler whole: added",
      "rear.antiRollBar.diameter whole: differentPart",
      "rear.dropLink.joint whole: differentPart",
      "wheels.front.size whole: periodOption",
      "front.camber right: insideLimits",
      "body.style whole: asSpecified",
      "front.antiRollBar.diameter whole: notRecorded",
    ]);
    const ranks = compared(car).factory.map(({ verdict }) => verdicts.indexOf(verdict));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(deviating(compared(car).factory)).toHaveLength(6);
  });

  test("is told in words", () => {
    expect(said(car)).toEqual([
      "-2°0' where -1° to 0° was specified, outside limits",
      "not fitted where 2.2 was specified",
      "Ahead of the radiator where none was specified",
      "20 mm where 16 mm was specified: +4 mm, × 1.25",
      "Rod end where Rubber bush was specified",
      "5.5J x 13 where 5J x 13 was specified, period option",
    ]);
  });

  test("differs from as built where a value is known for both", () => {
    const lines = compared(car).built.map(
      (one) => `${one.characteristic}: ${sayDeviation(one, builtInBook, "metric")}`,
    );
    expect(lines).toEqual([
      "rear.antiRollBar.diameter: 20 mm where 16 mm left the works: +4 mm, × 1.25",
      "body.style: Coupé, as built",
    ]);
  });

  test("says differences as fine as the entries allow", () => {
    const words = (nominal: string, actual: string, key = bar) =>
      said({ entries: [specified(key, { nominal })], modifications: [changed(key, actual)] });
    expect(words("9/16 in", "5/8 in")).toEqual(["5/8 in where 9/16 in was specified: +1.6 mm, × 1.11"]);
    expect(words("16 mm", "14 mm")).toEqual(["14 mm where 16 mm was specified: -2 mm, × 0.88"]);
    expect(words("95 lb/in", "120 lb/in", "front.spring.rate")).toEqual([
      "120 lb/in where 95 lb/in was specified: +25 lb/in, × 1.26",
    ]);
  });

  test("says a difference in the unit that both were written in, and in the club's where they were not", () => {
    const words = (
      nominal: string,
      actual: string,
      key: string,
      system: "metric" | "imperial" = "metric",
    ) => {
      const modifications = [changed(key, actual, sampleCharacteristic(key).sided ? "left" : "whole")];
      const { factory } = compared({ entries: [specified(key, { nominal })], modifications });
      return factory.map((one) => deviationLine(one, builtInBook, system).difference).join("");
    };
    const pressure = "tyres.front.pressure";
    // 1 psi = 6894.76 Pa (NIST SP 811, B.8): 25 psi less 1.5 bar is 22.4 kPa.
    expect(words("22 psi", "20 psi", pressure)).toBe("-2 psi");
    expect(words("1.5 bar", "25 psi", pressure)).toBe("+0.22 bar");
    expect(words("150 kPa", "160 kPa", pressure, "imperial")).toBe("+10 kPa");
    expect(words("16.6 N/mm", "95 lb/in", "front.spring.rate")).toMatch(/^\+?-?0\.0\d* N\/mm, × 1\.00$/);
    expect(words("9/16 in", "5/8 in", bar)).toBe("+1.6 mm, × 1.11");
  });
});
