import { describe, expect, test } from "vitest";
import { attribute, markup, tags } from "../test/markup";
import { TimePlot } from "./time-plot";

const points = [
  { on: "2020-01-01", value: -1, uncertainty: 0.1 },
  { on: "2022-01-01", value: 0.5, uncertainty: 0 },
  { on: "2023-01-01", value: 2, uncertainty: 0.3 },
];
const html = markup(
  <TimePlot
    unit="°"
    lower={-0.5}
    upper={0.5}
    lines={[
      { key: "left", label: "Left", points },
      { key: "right", label: "Right", points: points.slice(1) },
    ]}
  />,
);

const day = (text: string) => new Date(`${text}T00:00:00Z`).getTime();
const number = (tag: string | undefined, name: string) => Number(attribute(tag, name));

describe("readings over the years", () => {
  test("stand where their table has them: days along, values up, told by the first and the last", () => {
    const squares = tags(html, "rect").map((tag) => ({
      x: number(tag, "x") + 3.2,
      y: number(tag, "y") + 3.2,
    }));
    const circles = tags(html, "circle").map((tag) => ({ x: number(tag, "cx"), y: number(tag, "cy") }));
    expect([squares.length, circles.length]).toEqual([3, 2]);
    const [first, , last] = squares;
    if (!first || !last) throw new Error("no marks");
    const along = (on: string) =>
      first.x +
      ((last.x - first.x) * (day(on) - day("2020-01-01"))) / (day("2023-01-01") - day("2020-01-01"));
    const up = (value: number) => first.y + ((last.y - first.y) * (value + 1)) / 3;
    expect(squares[1]?.x).toBeCloseTo(along("2022-01-01"), 0);
    expect(squares[1]?.y).toBeCloseTo(up(0.5), 0);
    expect(circles).toEqual(
      squares.slice(1).map(({ x, y }) => ({ x: expect.closeTo(x, 1), y: expect.closeTo(y, 1) })),
    );
    const whiskers = [...html.matchAll(/d="M[\d.]+ ([\d.]+)V([\d.]+)M/g)].map(
      ([, from, to]) => Number(to) - Number(from),
    );
    const unit = (first.y - last.y) / 3;
    expect(whiskers).toEqual([0.2, 0.6, 0.6].map((reach) => expect.closeTo(reach * unit, 0)));
  });

  test("are told apart by their marks and their strokes, not by colour", () => {
    expect(html).toMatch(/stroke-dasharray="5 3"/);
    expect(html).toContain(">Left</text>");
    expect(html).toContain(">Right</text>");
  });

  test("of which there are none draw nothing", () => {
    expect(markup(<TimePlot unit="°" lines={[]} />)).toBe("");
  });
});
