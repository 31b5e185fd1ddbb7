import { type BracketModel, verdicts } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { ContentWriter } from "../content/content-writer";
import { drawBracket } from "./bracket";
import { drawVerdictMark } from "./verdict-mark";

const red = "0.69 0.07 0.1";
const area = { x: 100, y: 50, width: 80 };

function drawn(model: BracketModel): string[] {
  const page = new ContentWriter();
  drawBracket(page, area, model);
  return Buffer.from(page.bytes()).toString("latin1").split("\n");
}

/** Where the tick stands: the one upright line 10 points tall. */
function tick(model: BracketModel): number | undefined {
  const line = drawn(model).find((operator) => /^([\d.]+) 48\.4 m \1 58\.4 l S$/.test(operator));
  return line === undefined ? undefined : Number(line.split(" ")[0]);
}

describe("the bracket", () => {
  test("limits stand at a quarter and three quarters, the value between them to scale", () => {
    expect(drawn({ lower: 2, upper: 6 })).toContain("120 54.6 m 120 50 l 160 50 l 160 54.6 l S");
    expect(tick({ lower: 2, upper: 6, value: 2 })).toBe(120);
    expect(tick({ lower: 2, upper: 6, value: 4 })).toBe(140);
    expect(tick({ lower: 2, upper: 6, value: 6 })).toBe(160);
    expect(tick({ lower: 2, upper: 6, value: 7 })).toBe(170);
  });

  test("a value on the limit is not marked as beyond it, one above it is", () => {
    expect(drawn({ lower: 2, upper: 6, value: 6 }).join("\n")).not.toContain(red);
    expect(drawn({ lower: 2, upper: 6, value: 6.1 }).join("\n")).toContain(red);
    expect(drawn({ lower: 2, value: 1.9 }).join("\n")).toContain(red);
  });

  test("a value far off becomes an arrow at the edge, on its own side", () => {
    expect(tick({ lower: 2, upper: 6, value: 60 })).toBeUndefined();
    expect(drawn({ lower: 2, upper: 6, value: 60 })).toContain("180 54 m 175 57.6 l 175 50.4 l h f");
    expect(drawn({ lower: 2, upper: 6, value: -60 })).toContain("100 54 m 105 57.6 l 105 50.4 l h f");
  });

  test("the whisker spans the value plus and minus its uncertainty", () => {
    expect(drawn({ lower: 2, upper: 6, value: 4, expandedUncertainty: 1 })).toContain("130 54 m 150 54 l S");
  });

  test("a missing limit leaves that end open", () => {
    expect(drawn({ lower: 2, value: 4 })).toContain("120 54.6 m 120 50 l 164 50 l S");
    expect(drawn({ upper: 6, value: 4 })).toContain("116 50 m 160 50 l 160 54.6 l S");
  });

  test("numbers that are none, equal limits and an empty bracket are drawn without harm", () => {
    for (const model of [
      {
        lower: Number.NaN,
        upper: Number.POSITIVE_INFINITY,
        value: Number.NaN,
        expandedUncertainty: Number.NaN,
      },
      { lower: 3, upper: 3, nominal: 3, value: 3 },
      { lower: 6, upper: 2, value: 4 },
      { nominal: 0, value: 1e300 },
      {},
    ]) {
      expect(drawn(model).join(" ")).not.toMatch(/NaN|Infinity|e[+-]?\d/);
    }
  });
});

describe("verdict marks", () => {
  const shapes = verdicts.map((verdict) => {
    const page = new ContentWriter();
    drawVerdictMark(page, [50, 50], verdict);
    // Without colour: what a black-and-white printer leaves.
    return Buffer.from(page.bytes()).toString("latin1").replaceAll(red, "0 0 0");
  });

  test("each verdict has a form of its own without any colour", () => {
    expect(new Set(shapes).size).toBe(verdicts.length);
    for (const shape of shapes) expect(shape).toMatch(/[SfB]$/m);
  });
});
