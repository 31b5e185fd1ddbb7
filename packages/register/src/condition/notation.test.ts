import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Condition } from "./condition";
import { notationLimit, readCondition, writeCondition } from "./notation";
import { anyCondition } from "./sample-condition";

const bar: Condition = { op: "number", characteristic: "rear.antiRollBar.diameter", is: "gt", si: 0.016 };

describe("a condition in an address", () => {
  test.each<[Condition, string]>([
    [{ op: "always" }, "always"],
    [bar, "number_rear.antiRollBar.diameter_gt_0.016"],
    [
      { op: "all", of: [bar, { op: "not", of: { op: "always" } }] },
      "all2_number_rear.antiRollBar.diameter_gt_0.016_not_always",
    ],
    [{ op: "series", in: ["series-2", "series-3"] }, "series2_series-2_series-3"],
    [{ op: "built", to: "1971-12-31" }, "built__1971-12-31"],
    [{ op: "absent", characteristic: "front.droplink", side: "left" }, "absent.left_front.droplink"],
    [{ op: "textHas", characteristic: "body.colour", text: "blå_*" }, "textHas_body.colour_bl*C3*A5*5F*2A"],
  ])("%o is %s", (condition, text) => {
    expect(writeCondition(condition)).toBe(text);
    expect(readCondition(text)).toEqual({ ok: true, condition });
  });

  test("is left alone by an address, and reads back to the letter, whatever it is", () => {
    fc.assert(
      fc.property(anyCondition, (condition) => {
        const text = writeCondition(condition);
        // WHATWG URL, application/x-www-form-urlencoded: these signs are not percent-encoded.
        expect(text).toMatch(/^[A-Za-z0-9*._-]*$/);
        if (text.length > notationLimit) return;
        expect(readCondition(text)).toEqual({ ok: true, condition });
      }),
      { numRuns: 500 },
    );
  });

  test.each([
    ["", '"" is no part of a condition'],
    ["number_rear.antiRollBar.diameter_gt", "it was cut short"],
    ["all2_always", "it was cut short"],
    ["always_always", "there is more after its end"],
    ["sometimes_x", '"sometimes" is no part of a condition'],
    ["number_front.camber_gt_fast", '"fast" is no part of a condition'],
    ["number_front.camber_above_1", /^at is: /],
    ["number_front.camber_gt_1e999", /^at si: /],
    ["textHas_body.colour_bl*C3", /is no part of a condition$/],
    ["textHas_body.colour_a*00b", /no control characters/],
    ["textHas_body.colour_<script>", /is no part of a condition$/],
    ["all0", /^at of: /],
    ["not_".repeat(400), '"not" is no part of a condition'],
    [`series1_${"x".repeat(notationLimit)}`, /at most 4000 are read/],
  ])("that reads %j is refused: %s", (text, problem) => {
    const read = readCondition(text);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem).toMatch(problem);
  });

  test("never breaks on any text", () => {
    const word = fc.constantFrom(
      "all2",
      "not",
      "number",
      "front.camber",
      "gt",
      "1",
      "_",
      "*",
      "always",
      "code3",
      "%",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: "binary" }),
          fc.array(word).map((words) => words.join("_")),
        ),
        (text) => {
          const read = readCondition(text);
          if (read.ok) expect(readCondition(writeCondition(read.condition))).toEqual(read);
        },
      ),
      { numRuns: 1_000 },
    );
  });
});
