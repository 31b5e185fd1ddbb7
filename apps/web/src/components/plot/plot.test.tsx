import { builtInCharacteristics, type SpreadRow, valueAxis, type YearShares } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { attribute, markup, tags } from "../../test/markup";
import { CountBar } from "./count-bar";
import { Histogram, standingLegend } from "./histogram";
import { axisTicks } from "./tick";
import { QuartilePlot, SharePlot } from "./year-plot";

const camber = builtInCharacteristics.find(({ key }) => key === "front.camber");
if (camber?.kind !== "quantity") throw new Error("camber is a quantity");
const axis = valueAxis(camber, "metric");

const rows = [
  { label: "a", from: -30, to: -15, count: 6, asSpecified: 4, accepted: 1, differs: 1, notCompared: 0 },
  { label: "b", from: -15, to: 0, count: 0, asSpecified: 0, accepted: 0, differs: 0, notCompared: 0 },
  { label: "c", from: 0, to: 15, count: 3, asSpecified: 0, accepted: 0, differs: 2, notCompared: 1 },
] satisfies readonly SpreadRow[];

/** Height or width of each drawn part with what it stands for. */
function parts(html: string, size: "height" | "width") {
  return tags(html, "rect")
    .filter((tag) => attribute(tag, "data-count") !== undefined)
    .map((tag) => ({
      count: Number(attribute(tag, "data-count")),
      size: Number(attribute(tag, size)),
      standing: attribute(tag, "data-standing"),
    }));
}

describe("a histogram", () => {
  const html = markup(
    <Histogram id="h" rows={rows} axis={axis} limits={[{ label: "Mark 1", lower: -30, upper: 30, at: 0 }]} />,
  );

  test("draws every count of its table, and nothing else, each as high as it is many", () => {
    const drawn = parts(html, "height");
    expect(drawn.map(({ count, standing }) => [standing, count])).toEqual([
      ["asSpecified", 4],
      ["accepted", 1],
      ["differs", 1],
      ["differs", 2],
      ["notCompared", 1],
    ]);
    const unit = (drawn[0]?.size ?? 0) / 4;
    for (const { count, size } of drawn) expect(size).toBeCloseTo(count * unit, 0);
  });

  test("tells how values stand by hatching, not by colour alone", () => {
    const fills = tags(html, "rect")
      .filter((tag) => attribute(tag, "data-standing") !== undefined)
      .map((tag) => attribute(tag, "fill") ?? attribute(tag, "class"));
    expect(new Set(fills).size).toBe(4);
    expect(standingLegend(rows, String).map(({ label, count }) => [label, count])).toEqual([
      ["as specified or inside limits", "4"],
      ["accepted, or cannot tell", "1"],
      ["differs", "3"],
      ["nothing to compare with", "1"],
    ]);
  });

  test("draws the limits on the axis of the values, and names whose they are", () => {
    expect(html).toContain("Mark 1");
    // From −30 to 30 the axis is 316 wide: limits at its ends, the nominal in its middle.
    expect(html).toMatch(/M34 \d+V\d+H350V\d+/);
    expect(html).toMatch(/M192 \d+l3 5h-6z/);
  });
});

describe("ticks", () => {
  test("stand at what reads well in the unit, within the ends", () => {
    expect(axisTicks(axis, [-50, 70]).map(({ label }) => label)).toEqual([
      "-0°30'",
      "0°00'",
      "0°30'",
      "1°00'",
    ]);
  });

  test("are there where all values are equal too", () => {
    expect(axisTicks(axis, [30, 30]).length).toBeLessThanOrEqual(2);
  });
});

describe("a plot over the years", () => {
  const shares: readonly YearShares[] = [
    { year: 1990, count: 5, counts: [3, 2, 0, 0, 0] },
    { year: 1995, count: 1, counts: [0, 0, 0, 0, 1] },
  ];

  test("draws every count of its table as high as it is many", () => {
    const drawn = parts(markup(<SharePlot id="s" rows={shares} />), "height");
    expect(drawn.map(({ count }) => count)).toEqual([3, 2, 1]);
    const unit = (drawn[0]?.size ?? 0) / 3;
    for (const { count, size } of drawn) expect(size).toBeCloseTo(count * unit, 0);
  });

  test("names a year below its bars even where they lie within one", () => {
    const months = [1, 2, 6].map((month) => ({
      year: 1976 + (month - 0.5) / 12,
      count: 2,
      counts: [2, 0, 0, 0, 0],
    }));
    expect(markup(<SharePlot id="m" rows={months} step={1 / 12} />)).toContain(">1976</text>");
  });

  test("of quantities draws one stroke and one square a year", () => {
    const quartiles = [1990, 1991, 1994].map((year, place) => ({
      year,
      count: 9,
      lower: -40 + place,
      median: -20,
      upper: 5,
      said: "",
    }));
    const html = markup(<QuartilePlot rows={quartiles} axis={axis} />);
    expect(html.match(/data-year=/g)).toHaveLength(3);
    // Two figures say where nought lies and how long a degree is; every other one of the table must lie there too.
    const strokes = [...html.matchAll(/data-year="\d+"><path d="M([\d.]+) ([\d.]+)V([\d.]+)"/g)];
    const squares = [...html.matchAll(/<rect x="([\d.]+)" y="([\d.]+)" width="6" height="6"/g)];
    const [first] = strokes.map(([, , lower, upper]) => ({ lower: Number(lower), upper: Number(upper) }));
    const unit = ((first?.lower ?? 0) - (first?.upper ?? 0)) / 45;
    const placeOf = (value: number) => (first?.upper ?? 0) + (5 - value) * unit;
    for (const [index, { lower, median, upper }] of quartiles.entries()) {
      expect(Number(strokes[index]?.[2])).toBeCloseTo(placeOf(lower), 0);
      expect(Number(strokes[index]?.[3])).toBeCloseTo(placeOf(upper), 0);
      expect(Number(squares[index]?.[2]) + 3).toBeCloseTo(placeOf(median), 0);
    }
    const years = strokes.map(([, x]) => Number(x));
    const year = ((years[2] ?? 0) - (years[0] ?? 0)) / 4;
    expect(years[1]).toBeCloseTo((years[0] ?? 0) + year, 0);
    expect(html).not.toContain("NaN");
    expect(markup(<QuartilePlot rows={quartiles.slice(0, 1)} axis={axis} />)).not.toContain("NaN");
  });
});

test("a row's bar is as wide as its share of the longest", () => {
  const row = { asSpecified: 3, accepted: 0, differs: 1, notCompared: 0 };
  const drawn = parts(markup(<CountBar id="c" row={row} most={8} />), "width");
  expect(drawn.map(({ count, size }) => size / count)).toEqual(
    [238 / 8, 238 / 8].map((unit) => expect.closeTo(unit, 0)),
  );
});
