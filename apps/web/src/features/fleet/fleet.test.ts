import { describe, expect, test } from "vitest";
import { sayStanding } from "./compare-page";
import { differingPath } from "./differing";
import { sayAway } from "./due-page";
import { dayTowards } from "./month-keys";
import { sayShare } from "./prevalence-table";
import { monthRows, sayHeld, sayKnown, spansOf } from "./survival-page";
import { sayWhom } from "./thin-section";
import { sayConnection, sayOdds, sayProbability } from "./together-section";

const monthsOf = (count: number) =>
  Array.from({ length: count }, (_, place) => ({
    month: `${1968 + Math.floor(place / 12)}-${String((place % 12) + 1).padStart(2, "0")}`,
    cars: 4,
    inUse: 2,
    resting: 1,
    gone: 0,
    unknown: 1,
  }));

describe("months of building", () => {
  test("stay months while they can be told apart, and become quarters with the same cars beyond", () => {
    expect(spansOf(monthsOf(48))).toMatchObject({ months: 1 });
    const { months, spans } = spansOf(monthsOf(60));
    expect(months).toBe(3);
    expect(spans).toHaveLength(20);
    expect(spans[1]).toEqual({
      month: "1968, quarter 2",
      cars: 12,
      inUse: 6,
      resting: 3,
      gone: 0,
      unknown: 3,
    });
    const drawn = monthRows(spans).reduce(
      (sum, { counts }) => sum + counts.reduce((all, one) => all + one, 0),
      0,
    );
    expect(drawn).toBe(240);
  });

  test("stand in the middle of their month", () => {
    expect(monthRows(monthsOf(1))[0]?.year).toBeCloseTo(1968 + 1 / 24, 9);
  });
});

describe("arrow keys in a month", () => {
  const due = ["2026-12-03", "2026-12-10", "2026-12-12", "2026-12-31"];
  test.each([
    ["2026-12-03", 1, "2026-12-10"],
    ["2026-12-10", -1, "2026-12-03"],
    ["2026-12-03", 7, "2026-12-10"],
    ["2026-12-12", -7, "2026-12-03"],
    ["2026-12-12", 7, "2026-12-31"],
    ["2026-12-31", 1, undefined],
    ["2026-12-03", -7, undefined],
  ])("from %s by %d go to %s", (from, by, expected) => expect(dayTowards(due, from, by)).toBe(expected));
});

describe("words of the fleet's figures", () => {
  test("tell how a car stands by itself as well as beside the others", () => {
    const stands = { outside: 2, cannotTell: 1 };
    expect(sayStanding(stands, { count: 11, isReference: false })).toBe(
      "differs at 11; 2 outside limits, 1 cannot be told",
    );
    expect(sayStanding(stands, { count: 0, isReference: true })).toBe(
      "the reference; 2 outside limits, 1 cannot be told",
    );
    expect(sayStanding(stands, { isReference: false })).toBe("2 outside limits, 1 cannot be told");
    expect(sayStanding({ outside: 0, cannotTell: 0 }, { isReference: false })).toBe("nothing outside limits");
    expect(sayStanding({ outside: 0, cannotTell: 0 }, { count: 0, isReference: false })).toBe(
      "differs nowhere",
    );
  });

  test("say how far off a day is, before and after it", () => {
    expect(sayAway("2026-02-28", "2026-11-29")).toBe("274 days past");
    expect(sayAway("2026-11-29", "2026-11-29")).toBe("today is the last");
    expect(sayAway("2026-11-30", "2026-11-29")).toBe("in 1 day");
  });

  test("say what records hold without a span of one number", () => {
    expect(sayHeld([5, 16, 22])).toBe("half of the records hold 5 to 22 values, the median 16");
    expect(sayHeld([35, 35, 35])).toBe("half of the records or more hold 35 values");
  });

  test("lead from a count to its cars, within what the cars were narrowed to", () => {
    expect(differingPath("sandvaer", "front.disc.face", { series: "series-2" })).toBe(
      "/club/sandvaer/car?series=series-2&where=verdict4_front.disc.face_outsideLimits_differentPart_added_missing&col=front.disc.face",
    );
    expect(differingPath("sandvaer", "front.disc.face", { where: "recorded_front.camber" })).toContain(
      "where=all2_recorded_front.camber_verdict4_front.disc.face",
    );
  });

  test("give no share of few, and none of nothing", () => {
    expect(sayShare({ differs: 14, compared: 52 })).toBe("14 of 52 cars, 27 %");
    expect(sayShare({ differs: 3, compared: 9 })).toBe("3 of 9 cars: few");
    expect(sayShare({ differs: 0, compared: 0 })).toBe("nothing to compare with");
    expect(sayKnown({ numbers: 74, built: 180 })).toBe("41 %");
    expect(sayKnown({ numbers: 74 })).toBe("");
  });

  test("give odds as people read them, and none where one would divide by nothing", () => {
    expect(
      [0, 0.27, 3.9, 233.4, undefined].map((oddsRatio) =>
        sayOdds(oddsRatio === undefined ? {} : { oddsRatio }),
      ),
    ).toEqual(["0", "0.27", "3.9", "233", "no ratio"]);
  });

  test("never call a probability nought, and say of small numbers that they are", () => {
    expect(sayProbability(1e-9)).toBe("less than 1 in 1,000");
    expect(sayProbability(0.04)).toBe("0.040");
    const row = {
      key: "k",
      label: "K",
      assembly: "brakes",
      both: 1,
      firstOnly: 1,
      secondOnly: 1,
      neither: 1,
      count: 4,
      exactProbability: 1,
      leastExpected: 1,
      phi: -0.3,
      small: true,
      holdsUp: false,
    } as const;
    expect(sayConnection(row)).toBe("seldom together; may be chance; small numbers");
    expect(sayConnection({ ...row, phi: 0.6, small: false, holdsUp: true })).toBe("strongly together");
  });

  test("name nobody to whom it is not said", () => {
    expect(sayWhom({ whom: { who: "registrar" } })).toBe("through the registrar, who knows the keeper");
    expect(sayWhom({ whom: { who: "keeper", member: true } })).toBe("its keeper (a member here)");
  });
});
