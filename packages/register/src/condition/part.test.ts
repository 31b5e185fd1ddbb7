import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Condition } from "./condition";
import { readCondition, writeCondition } from "./notation";
import { hasPart, partsOfCondition, withoutPart, withPart } from "./part";
import { anyCondition } from "./sample-condition";

const series: Condition = { op: "series", in: ["series-2"] };
const status: Condition = { op: "status", in: ["laidUp"] };

describe("a part of a condition", () => {
  test("is added last, once, and an only part stands by itself", () => {
    expect(withPart(undefined, series)).toEqual(series);
    expect(withPart(series, status)).toEqual({ op: "all", of: [series, status] });
    expect(withPart({ op: "all", of: [series, status] }, series)).toEqual({
      op: "all",
      of: [series, status],
    });
    expect(withPart({ op: "always" }, series)).toEqual(series);
  });

  test("taken off leaves the others, and nothing of an only one", () => {
    expect(withoutPart({ op: "all", of: [series, status] }, series)).toEqual(status);
    expect(withoutPart(series, series)).toBeUndefined();
    expect(withoutPart({ op: "any", of: [series, status] }, series)).toEqual({
      op: "any",
      of: [series, status],
    });
  });

  test("added to any condition can be read back from an address, and taken off gives its parts again", () => {
    fc.assert(
      fc.property(anyCondition, anyCondition, (one, part) => {
        fc.pre(part.op !== "all" && part.op !== "always" && !hasPart(one, part));
        const more = withPart(one, part);
        if (more === undefined) return;
        expect(readCondition(writeCondition(more))).toEqual({ ok: true, condition: more });
        expect(partsOfCondition(withoutPart(more, part))).toEqual(partsOfCondition(one));
      }),
    );
  });

  test("that would make the condition too long for an address, or too many, is refused", () => {
    const long: Condition = {
      op: "any",
      of: Array.from({ length: 90 }, (_, count) => ({
        op: "textHas",
        characteristic: "body.colour",
        text: `${"x".repeat(30)}${count}`,
      })),
    };
    expect(withPart(long, series)).toBeUndefined();
    const many: Condition = { op: "all", of: Array.from({ length: 100 }, () => series) };
    expect(withPart(many, status)).toBeUndefined();
  });
});
