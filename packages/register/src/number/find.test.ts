import { describe, expect, test } from "vitest";
import { coverageOf } from "./coverage";
import { findNumberTrouble } from "./find";
import type { BorneNumber, NumberedCar, NumberedSeries } from "./finding";
import { sayFinding } from "./say";

const series: NumberedSeries = {
  slug: "series-2",
  pattern: { series: "Series 2", prefix: "S2-", digits: 4, first: 1, last: 398, suffixes: [] },
  builtFrom: "1970-01-01",
  builtTo: "1972-05-31",
};

function car(chassis: string, parts: Partial<NumberedCar> = {}): NumberedCar {
  return { reference: chassis, chassis, series: "series-2", numbers: [], ...parts };
}
const bears = (kind: BorneNumber["kind"], number: string, span: BorneNumber["span"] = {}) => ({
  kind,
  number,
  span,
});
const built = (text: string, earliest: string, latest = earliest, precision = "day" as const) => ({
  text,
  earliest,
  latest,
  precision,
});
const find = (...cars: readonly NumberedCar[]) => findNumberTrouble(cars, [series]);

describe("trouble with numbers", () => {
  test("is none in a register without any", () => {
    expect(
      find(
        car("S2-0001", {
          numbers: [bears("engine", "K1"), bears("registration", "AB 1")],
          built: built("1970", "1970-01-02"),
        }),
        car("S2-0002", { numbers: [bears("engine", "K2")], built: built("1970", "1970-01-02") }),
      ),
    ).toEqual([]);
  });

  test("tells a number that does not fit, with near misses and who holds them", () => {
    const [found, ...others] = find(car("S2-0421"), car("S2-0241"));
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      kind: "doesNotFit",
      problem: "0421 lies above the last of Series 2, which is 0398",
      proposals: [{ number: "S2-0241", heldBy: ["S2-0241"] }],
    });
  });

  test("tells a car that fits a series its record does not name", () => {
    const { series: _, ...unsettled } = car("S2-0003");
    expect(find(unsettled).map((one) => sayFinding(one).what)).toEqual([
      "S2-0003 fits Series 2, and the record names no series.",
    ]);
  });

  test("tells each number that several cars bear, once", () => {
    const found = find(
      car("S2-0001", { numbers: [bears("engine", "KM 1"), bears("commission", "77")] }),
      car("S2-0001", {
        reference: "S2-0001~2",
        numbers: [bears("engine", "km1"), bears("commission", "78")],
      }),
    );
    expect(found.map((one) => one.kind === "claimed" && [one.numberKind, one.sure, one.cars.length])).toEqual(
      [
        ["chassis", "certain", 2],
        ["engine", "possible", 2],
      ],
    );
  });

  test("tells a car stamped also with another's number", () => {
    const found = find(car("S2-0001"), car("S2-0002", { numbers: [bears("chassis", "S2 0001")] }));
    expect(found).toMatchObject([{ kind: "claimed", numberKind: "chassis", numberKey: "S20001" }]);
  });

  test("does not tell a mark that went from one car to the other, and says how sure an overlap is", () => {
    const until = bears("registration", "AB 1", { toEarliest: "1975-01-01", toLatest: "1975-01-31" });
    const since = (from: string) => bears("registration", "AB1", { fromEarliest: from, fromLatest: from });
    expect(
      find(car("S2-0001", { numbers: [until] }), car("S2-0002", { numbers: [since("1975-02-01")] })),
    ).toEqual([]);
    const [found] = find(
      car("S2-0001", { numbers: [until] }),
      car("S2-0002", { numbers: [since("1975-01-15")] }),
    );
    expect(found).toMatchObject({ kind: "claimed", numberKind: "registration", sure: "possible" });
  });

  test("tells numbers that differ by letters for digits only", () => {
    const found = find(
      car("S2-0001", { numbers: [bears("engine", "KM3O1")] }),
      car("S2-0002", { numbers: [bears("engine", "KM301")] }),
    );
    expect(found).toMatchObject([{ kind: "lookAlike", numbers: ["KM3O1", "KM301"] }]);
  });

  test("tells a build date outside its series, and not one that only reaches out of it", () => {
    const found = find(
      car("S2-0001", { built: built("1969", "1969-01-01", "1969-12-31") }),
      car("S2-0390", { built: built("1972", "1972-01-01", "1972-12-31") }),
    );
    expect(found.map(({ kind }) => kind)).toEqual(["outsideSeries"]);
  });

  test("tells a build date out of order", () => {
    const rest = [1, 2, 3, 4, 5].map((n) => car(`S2-000${n}`, { built: built(`day ${n}`, `1970-0${n}-01`) }));
    const found = find(...rest, car("S2-0006", { built: built("January 1970", "1970-01-01") }));
    expect(found).toMatchObject([
      { key: "outOfOrder S2-0006", order: { sure: "either", against: ["S2-0005", "S2-0004"] } },
    ]);
  });

  test("keeps the name of a finding as long as it is about the same thing, and tells when what it rests on changed", () => {
    const before = find(car("S2-0421"))[0];
    const after = findNumberTrouble(
      [car("S2-0421")],
      [{ ...series, pattern: { ...series.pattern, last: 400 } }],
    )[0];
    expect(after?.key).toBe(before?.key);
    expect(after?.basis).not.toBe(before?.basis);
  });
});

describe("what is known of a series", () => {
  test("counts serials once, leaves out numbers that do not fit, and lists the runs nobody knows", () => {
    const cars = [car("S2-0001"), car("S2-0001", { reference: "S2-0001~2" }), car("S2-0003"), car("S2-0421")];
    const coverage = coverageOf({ ...series, builtCount: 398 }, cars);
    expect(coverage).toMatchObject({ known: 2, unplaced: 1, built: 398 });
    expect(coverage.gaps).toEqual([
      { from: "0002", to: "0002", count: 1 },
      { from: "0004", to: "0398", count: 395 },
    ]);
  });
});
