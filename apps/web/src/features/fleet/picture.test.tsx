import type { PrevalenceRow, Spread, Survival } from "@trunnion/api";
import { builtInCharacteristics, type SpreadRow, valueAxis, type YearTable } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { Legend } from "../../components/plot/hatch";
import { standingLegend } from "../../components/plot/histogram";
import { markup } from "../../test/markup";
import { type DrawnPart, drawnParts, legendOf, tableOf } from "../../test/picture";
import { ChangeYears } from "./prevalence-page";
import { PrevalenceTable } from "./prevalence-table";
import { MonthSection } from "./survival-page";
import { EachTable, ValueSection } from "./value-section";
import { YearSection } from "./year-section";

const whole = (text: string | undefined) => Number((text ?? "").replace(/[^\d]/g, ""));

/** The drawn parts of each bar, bars told by where they stand along the axis. */
function barsOf(parts: readonly DrawnPart[]): readonly (readonly DrawnPart[])[] {
  const bars = new Map<number, DrawnPart[]>();
  for (const part of parts) bars.set(part.year, [...(bars.get(part.year) ?? []), part]);
  return [...bars.values()];
}

/** What a bar says of each kind, as the table's columns have it. */
const saidBy = (bar: readonly DrawnPart[], columns: readonly string[]) =>
  columns.map((column) => bar.find(({ label }) => label === column)?.count ?? 0);

/** Every bar as long as it counts, by the measure of the longest: sizes are drawn to a tenth. */
function expectOneMeasure(parts: readonly DrawnPart[], size: "height" | "width") {
  const [first] = [...parts].sort((a, b) => b.count - a.count);
  if (first === undefined) throw new Error("nothing is drawn");
  for (const part of parts) expect(part[size]).toBeCloseTo((first[size] / first.count) * part.count, 0);
}

const page = {
  characteristic: { key: "front.camber" },
  club: { slug: "sandvaer", sideWords: "leftRight" },
  figures: undefined,
  absent: 0,
  further: false,
  limits: [],
};
const camber = builtInCharacteristics.find(({ key }) => key === "front.camber");
if (camber?.kind !== "quantity") throw new Error("camber is a quantity");
const axis = valueAxis(camber, "metric");

const rows = [
  {
    label: "-0°30' up to -0°15'",
    from: -30,
    to: -15,
    count: 6,
    asSpecified: 4,
    accepted: 1,
    differs: 1,
    notCompared: 0,
  },
  {
    label: "-0°15' up to 0°00'",
    from: -15,
    to: 0,
    count: 0,
    asSpecified: 0,
    accepted: 0,
    differs: 0,
    notCompared: 0,
  },
  {
    label: "0°00' up to 0°15'",
    from: 0,
    to: 15,
    count: 3,
    asSpecified: 0,
    accepted: 0,
    differs: 2,
    notCompared: 1,
  },
] satisfies readonly SpreadRow[];

describe("a picture's figures are those of the table beside it", () => {
  test("for a spread by class: each part of each bar, named by its filling", () => {
    const html = markup(
      <ValueSection page={{ ...page, rows, as: "classes" } as unknown as Spread} axis={axis} query={{}} />,
    );
    const { head, rows: told } = tableOf(html, "Values by class");
    const bars = [...html.matchAll(/<g data-count="(\d+)">(.*?)<\/g>/gs)];
    expect(bars.map(([, count]) => Number(count))).toEqual(told.map(([, count]) => whole(count)));
    for (const [index, [, , drawn = ""]] of bars.entries())
      expect(saidBy(drawnParts(drawn, legendOf(html)), head.slice(2))).toEqual(
        told[index]?.slice(2).map(whole),
      );
    expectOneMeasure(drawnParts(html, legendOf(html)), "height");
  });

  test("for each kind of value: as long as its count, red as many as differ", () => {
    const html = markup(
      <>
        <Legend id="l" entries={standingLegend(rows, String)} />
        <EachTable rows={rows} />
      </>,
    );
    const { rows: told } = tableOf(html, "Each kind of value");
    const svgs = html.match(/<svg[^>]*class="count-bar">.*?<\/svg>/gs) ?? [];
    const drawn = svgs.map((svg) => drawnParts(svg, legendOf(html)));
    expect(drawn.map((bar) => bar.reduce((sum, { count }) => sum + count, 0))).toEqual(
      told.map(([, count]) => whole(count)),
    );
    expect(drawn.map((bar) => saidBy(bar, ["differs"])[0])).toEqual(
      told.map((cells) => (cells.at(-1) === "none" ? 0 : whole(cells.at(-1)))),
    );
    expectOneMeasure(drawn.flat(), "width");
  });

  test("for what has been changed: the share drawn is the share said", () => {
    const row = (key: string, differs: number, compared: number): PrevalenceRow => ({
      key,
      label: key,
      assembly: "brakes",
      setting: false,
      known: compared,
      compared,
      differs,
      changed: [],
      undated: 0,
    });
    const html = markup(
      <PrevalenceTable
        caption="Brakes"
        rows={[row("a", 65, 81), row("b", 0, 14), row("c", 4, 4), row("d", 0, 0)]}
        href={(key) => key}
      />,
    );
    const { rows: told } = tableOf(html, "Brakes");
    const svgs = [...html.matchAll(/<tr>.*?<\/tr>/gs)].slice(1).map(([tr]) => tr);
    const differs = svgs.map((tr) =>
      drawnParts(
        tr,
        new Map([
          ["mark", "differs"],
          ["lines", "does not"],
        ] as const),
      ),
    );
    expect(
      told.map(([, said]) =>
        said
          ?.match(/(\d+) of (\d+)/)
          ?.slice(1)
          .map(Number),
      ),
    ).toEqual(
      differs.map((bar) => {
        const [count = 0, rest = 0] = saidBy(bar, ["differs", "does not"]);
        return bar.length === 0 ? undefined : [count, count + rest];
      }),
    );
    expect(told[3]?.[1]).toBe("nothing to compare with");
    const [most] = differs;
    if (most) expectOneMeasure(most, "width");
  });

  test("for cars by month of building: each kind of standing, by month and by quarter", () => {
    const monthsOf = (count: number): Survival["months"] =>
      Array.from({ length: count }, (_, place) => ({
        month: `${1968 + Math.floor(place / 12)}-${String((place % 12) + 1).padStart(2, "0")}`,
        cars: 7 + place,
        inUse: 2,
        resting: 1 + place,
        gone: place % 2,
        unknown: 4 - (place % 2),
      }));
    for (const count of [6, 60]) {
      const html = markup(
        <MonthSection page={{ months: monthsOf(count), noMonth: 3 } as unknown as Survival} />,
      );
      const { head, rows: told } = tableOf(html, "Cars by month of building");
      const bars = barsOf(drawnParts(html, legendOf(html)));
      expect(bars.map((bar) => saidBy(bar, head.slice(2)))).toEqual(
        told.map((cells) => cells.slice(2).map(whole)),
      );
      expect(bars.map((bar) => bar.reduce((sum, part) => sum + part.count, 0))).toEqual(
        told.map(([, cars]) => whole(cars)),
      );
      expectOneMeasure(bars.flat(), "height");
    }
  });

  test("for changes by year", () => {
    const changed = (years: readonly [number, number][]) =>
      ({ changed: years.map(([year, cars]) => ({ year, cars })), undated: 1 }) as unknown as PrevalenceRow;
    const html = markup(
      <ChangeYears
        rows={[
          changed([
            [1990, 3],
            [1994, 1],
          ]),
          changed([
            [1990, 2],
            [2001, 9],
          ]),
        ]}
      />,
    );
    const { rows: told } = tableOf(html, "Changes by year");
    const drawn = drawnParts(html, legendOf(html));
    expect(drawn.map(({ year, count }) => [year, count])).toEqual(told.map((cells) => cells.map(whole)));
    expectOneMeasure(drawn, "height");
  });

  test("for kinds of value over the years: each kind in its own filling, all others in the last", () => {
    const shares: YearTable = {
      as: "shares",
      names: ["Plain", "Grooved", "all others"],
      rows: [
        { year: 1990, count: 6, counts: [3, 2, 1] },
        { year: 1995, count: 1, counts: [0, 0, 1] },
      ],
    };
    const html = markup(
      <YearSection
        page={{ built: shares, recorded: { ...shares, rows: [] } } as unknown as Spread}
        axis={undefined}
      />,
    );
    const { head, rows: told } = tableOf(html, "By the year the car was built");
    const bars = barsOf(drawnParts(html, legendOf(html)));
    expect(bars.map((bar) => [bar[0]?.year, ...saidBy(bar, head.slice(2))])).toEqual(
      told.map(([year, , ...counts]) => [whole(year), ...counts.map(whole)]),
    );
    expect(told.map(([, count]) => whole(count))).toEqual(
      bars.map((bar) => bar.reduce((sum, part) => sum + part.count, 0)),
    );
    expect(html).toContain("Nothing with a year.");
  });

  test("for a quantity over the years: the squares lie as the medians told", () => {
    const say = (place: number) => axis.say(place, 1);
    const medians = [-40, -10, 5];
    const quartiles: YearTable = {
      as: "quartiles",
      rows: medians.map((median, place) => ({
        year: 1990 + 3 * place,
        count: 9,
        lower: median - 20,
        median,
        upper: median + 15,
        said: `${say(median)} (${say(median - 20)} to ${say(median + 15)})`,
      })),
    };
    const html = markup(
      <YearSection
        page={{ built: quartiles, recorded: { ...quartiles, rows: [] } } as unknown as Spread}
        axis={axis}
      />,
    );
    const told = tableOf(html, "By the year the car was built").rows.map(([year, , said = ""]) => {
      const [, sign = "", degrees = "", minutes = ""] = /^(-?)(\d+)°(\d+)'/.exec(said) ?? [];
      return {
        year: whole(year),
        median: (sign === "-" ? -1 : 1) * (60 * Number(degrees) + Number(minutes)),
      };
    });
    expect(told.map(({ median }) => median)).toEqual(medians);
    const squares = [...html.matchAll(/data-year="(\d+)".*?<rect x="([\d.]+)" y="([\d.]+)"/gs)].map(
      ([, year, , y]) => ({ year: Number(year), y: Number(y) }),
    );
    expect(squares.map(({ year }) => year)).toEqual(told.map(({ year }) => year));
    const [first, , last] = squares;
    const [least, , most] = told;
    if (!first || !last || !least || !most) throw new Error("no squares");
    const unit = (first.y - last.y) / (most.median - least.median);
    for (const [index, { y }] of squares.entries())
      expect(y).toBeCloseTo(first.y - unit * ((told[index]?.median ?? 0) - least.median), 0);
  });
});
