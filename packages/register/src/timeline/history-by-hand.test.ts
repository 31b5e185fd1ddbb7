import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { deviationsFromFactory } from "../deviation/compare";
import { deviationLine } from "../deviation/line";
import { shiftDays } from "../identity/calendar";
import { parsePartialDate } from "../identity/partial-date";
import { entriesFor } from "../specification/entry";
import { changesBetween } from "../state/change";
import { type StateInput, stateOn } from "../state/fold";
import { doubtsOn, turningDays } from "../state/possible";
import { saySince } from "../state/since";
import type { AcceptedModification, AsBuiltValue, Reading } from "../state/state";
import { sampleValue } from "../value/sample";
import { believedAt, endOfDay, type Recorded } from "./belief";

const source = { title: "Owner's letters", trust: "stated" } as const;
const rear = "rear.antiRollBar.diameter";
const front = "front.antiRollBar.diameter";
const camber = "front.camber";

const entries = entriesFor(
  {
    id: "s",
    version: 1,
    entries: [
      {
        id: "front bar",
        characteristic: front,
        side: "whole",
        nominal: sampleValue(front, "14 mm"),
        alternatives: [],
        applicability: {},
        source,
      },
      {
        id: "camber",
        characteristic: camber,
        side: "whole",
        nominal: sampleValue(camber, "0°00'"),
        limits: { lower: -0.0087266, upper: 0.0087266 },
        alternatives: [],
        applicability: {},
        source,
      },
    ],
  },
  { options: [] },
  builtInBook,
);

type Statement<T> = T & Recorded;
type Told = { readonly entered: string; readonly recorded: string; readonly superseded?: string };

const recordedOf = ({ recorded, superseded }: Told): Recorded => ({
  recordedAt: `${recorded}T12:00:00.000Z`,
  ...(superseded === undefined ? {} : { supersededAt: `${superseded}T12:00:00.000Z` }),
});

function built(id: string, told: Told): Statement<AsBuiltValue> {
  return {
    id,
    characteristic: rear,
    side: "whole",
    value: sampleValue(rear, told.entered),
    source,
    ...recordedOf(told),
  };
}

function modified(
  id: string,
  sequence: number,
  told: Told & { readonly on: string; readonly characteristic: string },
): Statement<AcceptedModification> {
  const parsed = parsePartialDate(told.on, { today: "2026-05-31" });
  if (!parsed.ok) throw new Error(parsed.problem.message);
  const { earliest, latest, text } = parsed.date;
  const { characteristic, entered } = told;
  const side = characteristic === camber ? "left" : "whole";
  return {
    id,
    sequence,
    on: latest,
    earliest,
    ...(earliest === latest ? {} : { said: text }),
    changes: [{ characteristic, side, after: sampleValue(characteristic, entered) }],
    source,
    ...recordedOf(told),
  };
}

function seen(id: string, on: string, told: Told): Statement<Reading> {
  const value = sampleValue(camber, told.entered);
  // Half a tenth of a degree: six minutes at k = 2, from memory of such gauges' data sheets.
  const expandedUncertainty = 0.1 * (Math.PI / 180);
  return {
    id,
    on,
    sequence: 1,
    characteristic: camber,
    side: "left",
    value,
    expandedUncertainty,
    source,
    ...recordedOf(told),
  };
}

/**
 * One car's life. As built without a rear bar, which the club believed to be a 12 mm one until 2020. A bar of 14 mm in "1974",
 * corrected in 2021 to 16 mm in May of that year. Front bar: 20 mm in March 1998 and 18 mm at some time of 1998. Camber
 * read in 1999, set by hand on 1 June 2005, read again on that very day and once more in 2021.
 */
const life = {
  asBuilt: [
    built("B1", { entered: "12 mm", recorded: "2010-01-01", superseded: "2020-02-02" }),
    built("B2", { entered: "none", recorded: "2020-02-02" }),
  ],
  modifications: [
    modified("M1", 1, {
      characteristic: rear,
      on: "1974",
      entered: "14 mm",
      recorded: "2012-03-03",
      superseded: "2021-04-04",
    }),
    modified("M2", 2, { characteristic: rear, on: "5/1974", entered: "16 mm", recorded: "2021-04-04" }),
    modified("M3", 3, { characteristic: front, on: "3/1998", entered: "20 mm", recorded: "2012-03-03" }),
    modified("M4", 4, { characteristic: front, on: "1998", entered: "18 mm", recorded: "2015-05-05" }),
    modified("M5", 5, { characteristic: camber, on: "1.6.2005", entered: "-0°30'", recorded: "2012-03-03" }),
  ],
  readings: [
    seen("R1", "1999-06-01", { entered: "-1°00'", recorded: "2012-03-03" }),
    seen("R2", "2005-06-01", { entered: "-0°34'", recorded: "2016-06-06" }),
    seen("R3", "2021-05-15", { entered: "-0°50'", recorded: "2021-05-20" }),
  ],
};

const now = "2026-05-31";

function believed(day: string): StateInput {
  const instant = endOfDay(day);
  return {
    entries,
    asBuilt: believedAt(life.asBuilt, instant),
    modifications: believedAt(life.modifications, instant),
    readings: believedAt(life.readings, instant),
  };
}

/** Rear bar, front bar, left camber: what stands, since when, and behind "or" what the dates leave open. */
function told(day: string, on: string): readonly string[] {
  const input = believed(on);
  const state = stateOn(day, input);
  const doubts = doubtsOn(day, input);
  return [`${rear} whole`, `${front} whole`, `${camber} left`].map((key) => {
    const value = state.get(key);
    const stands = value === undefined || value.origin === "specification" ? "?" : value.value.entered;
    const since = value === undefined ? undefined : saySince(value);
    const others = (doubts.get(key) ?? []).filter(({ origin }) => origin !== "specification");
    const open = others.map(({ value: other }) => ` or ${other.entered}`).join("");
    return `${stands}${since === undefined ? "" : ` (${since})`}${open}`;
  });
}

describe("a car's life worked by hand", () => {
  test.each([
    ["1973-12-31", ["none", "?", "?"], "as built: nothing has been changed yet"],
    ["1974-04-30", ["none", "?", "?"], "the bar came in May"],
    ["1974-05-10", ["none or 16 mm", "?", "?"], "some day of May: perhaps already"],
    [
      "1974-05-31",
      ["16 mm (5/1974)", "?", "?"],
      "by the last of May it was there, said as the record says it",
    ],
    ["1998-02-15", ["16 mm (5/1974)", "? or 18 mm", "?"], "1998 has begun, March has not"],
    ["1998-03-15", ["16 mm (5/1974)", "? or 20 mm or 18 mm", "?"], "either front bar may be on"],
    ["1998-04-01", ["16 mm (5/1974)", "20 mm (3/1998) or 18 mm", "?"], "March is over, so one surely is"],
    [
      "1998-12-31",
      ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "?"],
      "the later last day stands, and that the other came after it stays open",
    ],
    ["1999-05-31", ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "?"], "the eve of the first reading"],
    [
      "1999-06-01",
      ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "-1°00' (1 Jun 1999)"],
      "a reading counts on its day",
    ],
    [
      "2005-05-31",
      ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "-1°00' (1 Jun 1999)"],
      "six years old, and it stands",
    ],
    [
      "2005-06-01",
      ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "-0°34' (1 Jun 2005)"],
      "set on that very day and read after: the reading overtakes the setting, which overtook the old reading",
    ],
    ["2021-05-14", ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "-0°34' (1 Jun 2005)"], "nothing since"],
    ["2021-05-15", ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "-0°50' (15 May 2021)"], "the last reading"],
  ])("on %s is %j: %s", (day, expected) => {
    expect(told(day, now)).toEqual(expected);
  });

  test.each([
    ["1973-01-01", "2009-12-31", ["?", "?", "?"], "nothing had been recorded"],
    [
      "1973-01-01",
      "2010-01-01",
      ["12 mm", "?", "?"],
      "the wrong as-built value, on the day it was written down",
    ],
    ["1973-01-01", "2020-02-01", ["12 mm", "?", "?"], "on the eve of its correction still believed"],
    ["1973-01-01", "2020-02-02", ["none", "?", "?"], "and from then on no more"],
    [
      "1974-06-15",
      "2015-01-01",
      ["12 mm or 14 mm", "?", "?"],
      "a bar of 1974, no month known: perhaps not yet",
    ],
    ["1975-01-01", "2015-01-01", ["14 mm (1974)", "?", "?"], "by the end of that year, as was believed"],
    ["1975-01-01", "2021-04-03", ["14 mm (1974)", "?", "?"], "the superseded modification, to the last day"],
    ["1975-01-01", "2021-04-04", ["16 mm (5/1974)", "?", "?"], "what took its place"],
    [
      "2000-01-01",
      "2015-05-04",
      ["14 mm (1974)", "20 mm (3/1998)", "-1°00' (1 Jun 1999)"],
      "the other front bar was not known of",
    ],
    [
      "2006-01-01",
      "2016-06-05",
      ["14 mm (1974)", "18 mm (1998) or 20 mm", "-0°30' (1 Jun 2005)"],
      "set by hand, the reading of that day not handed in yet",
    ],
    [
      "2006-01-01",
      "2016-06-06",
      ["14 mm (1974)", "18 mm (1998) or 20 mm", "-0°34' (1 Jun 2005)"],
      "handed in eleven years later",
    ],
    [
      "2022-01-01",
      "2021-05-19",
      ["16 mm (5/1974)", "18 mm (1998) or 20 mm", "-0°34' (1 Jun 2005)"],
      "read on the 15th, recorded on the 20th",
    ],
  ])("on %s was, as believed on %s, %j: %s", (day, on, expected) => {
    expect(told(day, on)).toEqual(expected);
  });

  test("never says a day that the record does not know", () => {
    const days = turningDays(believed(now)).flatMap((turn) => [turn, shiftDays(turn, 1)]);
    for (const day of days) {
      const input = believed(now);
      const state = stateOn(day, input);
      for (const deviation of deviationsFromFactory(state, entries, builtInBook)) {
        const { since, known } = deviationLine(deviation, builtInBook, "metric");
        for (const said of [since, known?.since ?? ""]) expect(said).not.toMatch(/31 (Dec|May|Mar)/);
      }
    }
  });

  test("gives the reading its ISO 14253-1 verdict, with its uncertainty of six minutes against half a degree", () => {
    const verdictOn = (day: string) => {
      const state = stateOn(day, believed(now));
      const found = deviationsFromFactory(state, entries, builtInBook).find(({ side }) => side === "left");
      return found?.verdict;
    };
    // −1°00' + 0°06' < −0°30'; −0°34' ± 0°06' reaches over it; ISO 14253-1:2017, 5.2 to 5.4.
    expect([verdictOn("1999-06-01"), verdictOn("2005-06-01"), verdictOn("2021-05-15")]).toEqual([
      "outsideLimits",
      "cannotTell",
      "outsideLimits",
    ]);
  });
});

describe("by property", () => {
  const anyDay = fc.integer({ min: 0, max: 20_000 }).map((days) => shiftDays("1972-01-01", days));

  test("what is believed now is what the standing records amount to", () => {
    const standing = <T extends Recorded>(list: readonly T[]) =>
      list.filter(({ supersededAt }) => supersededAt === undefined);
    const ordinary: StateInput = {
      entries,
      asBuilt: standing(life.asBuilt),
      modifications: standing(life.modifications),
      readings: standing(life.readings),
    };
    fc.assert(
      fc.property(anyDay, (day) => {
        expect(stateOn(day, believed(now))).toEqual(stateOn(day, ordinary));
      }),
    );
  });

  test("from day to day values change at dated events only, and in nothing they do not speak of", () => {
    fc.assert(
      fc.property(anyDay, anyDay, (day, on) => {
        const input = believed(on);
        const changes = changesBetween(stateOn(shiftDays(day, -1), input), stateOn(day, input));
        const dated = [
          ...input.modifications.flatMap((one) =>
            one.changes.map(({ characteristic }) => ({ on: one.on, characteristic })),
          ),
          ...input.readings,
        ].filter((one) => one.on === day);
        const spoken = new Set(dated.map(({ characteristic }) => characteristic));
        for (const { characteristic } of changes) expect(spoken).toContain(characteristic);
      }),
    );
  });

  test("what was learnt later never changes what was believed", () => {
    fc.assert(
      fc.property(anyDay, anyDay, (day, on) => {
        const instant = endOfDay(on);
        const known = <T extends Recorded>(list: readonly T[]): readonly T[] =>
          list
            .filter(({ recordedAt }) => recordedAt <= instant)
            .map((one) => {
              const { supersededAt, ...standing } = one;
              return supersededAt !== undefined && supersededAt > instant ? (standing as unknown as T) : one;
            });
        const then: StateInput = {
          entries,
          asBuilt: believedAt(known(life.asBuilt), instant),
          modifications: believedAt(known(life.modifications), instant),
          readings: believedAt(known(life.readings), instant),
        };
        expect(stateOn(day, believed(on))).toEqual(stateOn(day, then));
      }),
    );
  });
});
