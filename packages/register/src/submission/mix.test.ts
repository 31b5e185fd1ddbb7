import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { stateWith } from "../consequence/sample-state.fixture";
import {
  type ChangeDraft,
  emptyFastener,
  emptyModification,
  emptySubmission,
  type FastenerDraft,
} from "./content";
import { mixesOfSubmission } from "./mix";
import { readSubmission } from "./read";

const fastener = (more: Partial<FastenerDraft>): FastenerDraft => ({
  ...emptyFastener,
  place: "link to bracket",
  ...more,
});
const change = (place: string, after: string): ChangeDraft => {
  const [characteristic = "", side = "whole"] = place.split(" ");
  return { characteristic, side: side as ChangeDraft["side"], before: "", after };
};

function mixes(
  has: Readonly<Record<string, string>>,
  changes: readonly ChangeDraft[],
  fasteners: readonly FastenerDraft[] = [],
) {
  const state = stateWith(has);
  const basis = { book: builtInBook, today: "2026-11-25", stateOn: () => state };
  const modifications = [{ ...emptyModification, fitted: "14 Nov 2026", changes, fasteners }];
  const read = readSubmission({ ...emptySubmission("metric"), modifications }, basis);
  return mixesOfSubmission(read, basis);
}

const thread = "front.dropLink.boltThread";

describe("threads that look alike", () => {
  // ISO 724 and ASME B1.1: 3/8-24 UNF has a major diameter of 9.525 mm, the minor diameter of an M10x1.25 nut is 8.65 mm.
  test("a fastener of 3/8-24 UNF beside a part of M10x1.25 is told with both, and does not stop anything", () => {
    const told = mixes({}, [change(thread, "M10x1.25")], [fastener({ thread: "3/8-24 UNF" })]);
    expect(told).toMatchObject([{ of: 0, kind: "confusable" }]);
    expect(told[0]?.text).toMatch(/the fastener "link to bracket" has 3\/8-24 UNF/);
    expect(told[0]?.text).toMatch(/Front drop link bolt thread M10x1\.25: .*never mix them/);
  });

  test("the part that was there before is told too: both lie on one bench", () => {
    const [told] = mixes({ [thread]: "3/8 UNF" }, [change(thread, "M10x1.25")]);
    expect(told?.text).toContain("before it, Front drop link bolt thread");
  });

  test("what the car has elsewhere is no business of it, and neither are two that the record has already", () => {
    expect(mixes({ "wheels.stud.thread": "3/8 UNF" }, [change(thread, "M10x1.25")])).toEqual([]);
    const has = { "front.dropLink.boltThread": "M10x1.25", "wheels.stud.thread": "3/8 UNF" };
    expect(mixes(has, [change("front.antiRollBar.diameter", "20 mm")])).toEqual([]);
  });

  test("the same thread twice, and threads nobody takes for each other, are not told", () => {
    expect(mixes({}, [change(thread, "M10x1.5")], [fastener({ thread: "M10x1.5" })])).toEqual([]);
    expect(mixes({}, [change(thread, "M10x1.5")], [fastener({ thread: "M6" })])).toEqual([]);
  });
});

describe("lengths that look alike", () => {
  test("of two bolts of one thread are told with how far they are apart", () => {
    const told = mixes(
      {},
      [change(thread, "M10x1.5")],
      [
        fastener({ place: "upper", thread: "M10x1.5", length: "60 mm" }),
        fastener({ place: "lower", thread: "M10x1.5", length: "62 mm" }),
      ],
    );
    expect(told).toMatchObject([{ kind: "lengths" }]);
    expect(told[0]?.text).toContain("2.0 mm apart: not told apart by eye, measure before fitting");
  });

  test("of links left and right are told, of which one is on the record only", () => {
    const told = mixes({ "front.dropLink.length right": "101 mm" }, [
      change("front.dropLink.length left", "103 mm"),
    ]);
    expect(told.map(({ text }) => text).join(" ")).toContain("Front drop link length, right 101 mm");
  });

  test("far apart are not told", () => {
    const two = ["60 mm", "90 mm"].map((length, place) =>
      fastener({ place: `${place}`, thread: "M8", length }),
    );
    expect(mixes({}, [change(thread, "M8")], two)).toEqual([]);
  });
});
