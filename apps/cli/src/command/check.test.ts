import { describe, expect, test } from "vitest";
import { checkLines } from "./check";

const stale = { characteristic: "front.camber", side: "left", problem: "different" } as const;

describe("what a check found", () => {
  test("is one line for a club whose records hold", () => {
    expect(
      checkLines({ club: "ours", journal: [], currentValues: [], tallies: [], outdated: false }),
    ).toEqual(["ours: journal holds; current values are what the records amount to"]);
  });

  test("says that another version of the program worked the values out, although none is found to be other", () => {
    expect(checkLines({ club: "ours", journal: [], currentValues: [], tallies: [], outdated: true })).toEqual(
      [
        "ours: journal holds; current values are what the records amount to; worked out by another version of the program, --rebuild does it again",
      ],
    );
  });

  test("names where the chain breaks and which values are stale, twenty of them at most", () => {
    const currentValues = Array.from({ length: 23 }, (_, index) => ({ ...stale, car: `M1-${index}` }));
    const lines = checkLines({
      club: "ours",
      journal: [{ sequence: 7, problem: "hash" }],
      currentValues,
      tallies: [],
      outdated: false,
    });
    expect(lines[0]).toBe("ours: journal broken at 7; current values stale: 23");
    expect(lines[1]).toBe("  M1-0 front.camber left: different");
    expect(lines).toHaveLength(22);
    expect(lines.at(-1)).toBe("  and 3 more; --json tells all");
  });

  test("says that counts which are kept are wrong, and how they are put right", () => {
    const tallies = [{ about: "known", characteristic: "front.camber", kept: 9, counted: 8 }];
    expect(checkLines({ club: "ours", journal: [], currentValues: [], tallies, outdated: false })).toEqual([
      "ours: journal holds; current values are what the records amount to; kept counts wrong: 1, --rebuild counts anew",
    ]);
  });
});
