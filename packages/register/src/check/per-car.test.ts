import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Condition } from "../condition/condition";
import type { CarView } from "../condition/evaluate";
import { deviationsFromFactory } from "../deviation/compare";
import { entriesFor } from "../specification/entry";
import { stateOn } from "../state/fold";
import { sampleValue } from "../value/sample";
import { carriedChecks } from "./carried";
import { eligibilityOf } from "./eligibility";
import { checksForCar } from "./for-car";
import { limitChecks, type RuleLimit } from "./limit";

const source = { title: "Works manual", trust: "documented" } as const;
const rules = { title: "House rules", edition: "2026" };
const wheel = "wheels.front.size";

function viewOf(
  parts: Readonly<Record<string, string>>,
  specified: Readonly<Record<string, string>> = {},
): CarView {
  const basis = { options: [] };
  const list = Object.entries(specified).map(([characteristic, entered]) => ({
    id: characteristic,
    characteristic,
    side: "whole" as const,
    nominal: sampleValue(characteristic, entered),
    alternatives: [],
    applicability: {},
    source,
  }));
  const entries = entriesFor({ id: "s", version: 1, entries: list }, basis, builtInBook);
  const readings = Object.entries(parts).map(([name, entered], sequence) => {
    const [characteristic, at] = name.split("@") as [string, "left" | "right" | undefined];
    const value = sampleValue(characteristic, entered);
    const side = at ?? ("whole" as const);
    return { id: name, on: "2026-04-01", sequence, characteristic, side, value, source };
  });
  const state = stateOn("2026-05-01", { entries, asBuilt: [], modifications: [], readings });
  const deviations = deviationsFromFactory(state, entries, builtInBook);
  return { status: "inUse", basis, state, deviations, eventDay: "2026-05-01", book: builtInBook };
}

const rideHeight: RuleLimit = {
  characteristic: "front.rideHeight",
  side: "whole",
  limits: { lower: 0.1 },
  source: rules,
};
const measured = (left: string, right: string) =>
  limitChecks([rideHeight], {
    state: viewOf({ "front.rideHeight@left": left, "front.rideHeight@right": right }).state,
    book: builtInBook,
    system: "metric",
  });

describe("an organiser's limit", () => {
  test("makes no check for a car proven inside it", () => {
    expect(measured("105 mm", "104 mm")).toEqual([]);
  });

  test("says what was read, and on which side, where it is outside or too near to tell", () => {
    const [outside, ...more] = measured("95 mm", "105 mm");
    expect(more).toEqual([]);
    expect(outside).toMatchObject({
      id: "limit-front-ride-height",
      why: "the rules ask for at least 100 mm; left 95 mm, outside",
      criterion: { kind: "measured", characteristic: "front.rideHeight", text: "it is at least 100 mm" },
      source: rules,
    });
    expect(measured("100 mm", "105 mm")[0]?.why).toContain("left 100 mm, too near the limit to tell");
  });

  test("is to be measured where nothing is recorded: unknown is never a pass", () => {
    const view = viewOf({});
    const [check, ...more] = limitChecks([rideHeight], {
      state: view.state,
      book: builtInBook,
      system: "metric",
    });
    expect(more).toEqual([]);
    expect(check?.why).toContain("left not recorded; right not recorded");
    expect(checksForCar(check ? [check] : [], view, builtInBook)).toMatchObject([
      { reason: "rule", undecided: false },
    ]);
  });
});

describe("an advisory of an earlier event", () => {
  test("stands on the sheet as carried, with what was said, and with no place for figures in it", () => {
    const checks = carriedChecks([
      {
        checkCode: "brake-hoses",
        result: "advise",
        note: "left rear {chafed}\nsoon",
        text: "Brake hoses: no crack.",
        station: "underneath",
        assembly: "brakes",
        event: "Spring day",
        on: "2026-04-11",
      },
    ]);
    expect(checksForCar(checks, viewOf({}), builtInBook)).toMatchObject([
      {
        check: { id: "carried-brake-hoses", text: "See that it was put right: Brake hoses: no crack." },
        reason: "carriedAdvisory",
        why: "advised at Spring day on 2026-04-11: “left rear chafed soon”",
      },
    ]);
  });
});

describe("a class", () => {
  const standard: Condition = {
    op: "all",
    of: [
      { op: "verdict", characteristic: wheel, in: ["asSpecified", "periodOption"] },
      { op: "not", of: { op: "code", characteristic: "front.disc.face", in: ["drilled", "drilledGrooved"] } },
    ],
  };
  const specified = { [wheel]: "5J x 13", "front.disc.face": "plain" };
  const judged = (parts: Readonly<Record<string, string>>) =>
    eligibilityOf(standard, viewOf(parts, specified), {
      book: builtInBook,
      say: { system: "metric" },
    });

  test("takes a car as it was specified", () => {
    expect(judged({ [wheel]: "5J x 13", "front.disc.face": "plain" })).toEqual({
      truth: "yes",
      obstacles: [],
    });
  });

  test("says of a car it does not take what would have to be put back", () => {
    const { truth, obstacles } = judged({ [wheel]: "6J x 14", "front.disc.face": "drilled" });
    expect(truth).toBe("no");
    expect(obstacles).toMatchObject([
      { truth: "no", has: "6J x 14", factory: "5J x 13" },
      { truth: "no", has: "drilled", factory: "plain" },
    ]);
  });

  test("is unknown, not refused, where the record does not say", () => {
    const { truth, obstacles } = judged({ [wheel]: "5J x 13" });
    expect(truth).toBe("unknown");
    expect(obstacles).toMatchObject([{ truth: "unknown", has: "not recorded" }]);
  });
});
