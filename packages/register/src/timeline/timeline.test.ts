import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { KnownTime } from "../state/since";
import { believedAt, endOfDay } from "./belief";
import { endsOf } from "./closing";
import { inLifeOrder, type TimelineEvent } from "./event";
import { type JournalStep, rewind } from "./rewind";
import { type RowStep, rewindRows } from "./rewind-rows";
import { standsOn } from "./stands";

const in1998: KnownTime = { text: "1998", earliest: "1998-01-01", latest: "1998-12-31" };
const may3: KnownTime = { text: "3/5/2001", earliest: "2001-05-03", latest: "2001-05-03" };

function event(parts: Partial<TimelineEvent>): TimelineEvent {
  return { id: "1", lane: "life", title: "Laid up", ...parts };
}

describe("whether something was so on a day", () => {
  const span = event({ when: in1998, until: may3 });

  test.each([
    ["1997-12-31", "no", "before the year began"],
    ["1998-01-01", "maybe", "on the first day it may have begun"],
    ["1998-12-30", "maybe", "on the last but one"],
    ["1998-12-31", "yes", "by the last it had begun"],
    ["2001-05-03", "yes", "its last day counts"],
    ["2001-05-04", "no", "the day after"],
  ])("on %s: %s, %s", (day, expected) => {
    expect(standsOn(span, day)).toBe(expected);
  });

  test("an end that is no day leaves open from the day after its first", () => {
    const ended = event({
      when: { text: "1990", earliest: "1990-01-01", latest: "1990-12-31" },
      until: in1998,
    });
    expect(
      ["1998-01-01", "1998-01-02", "1998-12-31", "1999-01-01"].map((day) => standsOn(ended, day)),
    ).toEqual(["yes", "maybe", "maybe", "no"]);
  });

  test("without a beginning it is undated until it is over", () => {
    expect(standsOn(event({ until: "open" }), "1900-01-01")).toBe("undated");
    expect(standsOn(event({ until: may3 }), "2001-05-03")).toBe("undated");
    expect(standsOn(event({ until: may3 }), "2001-05-04")).toBe("no");
  });
});

describe("when a status ended", () => {
  test("is when the next began, in its words: never the 31 December of a year", () => {
    const spans = [{ from: may3, to: "1998-12-31" }, { from: in1998 }];
    expect(endsOf(spans)).toEqual([in1998, undefined]);
  });

  test("is known only as 'by' where the next has no date", () => {
    const [end] = endsOf([{ from: in1998, to: "2026-11-25" }, {}]);
    expect(end).toEqual({ text: "by 25 Nov 2026", earliest: "1998-01-01", latest: "2026-11-25" });
  });

  test("is the day itself where it was given as one", () => {
    expect(endsOf([{ from: in1998, to: "2001-05-03" }])[0]).toMatchObject({
      earliest: "2001-05-03",
      latest: "2001-05-03",
    });
  });
});

test("events stand in the order their dates count in, whatever the order of the list; undated ones last", () => {
  const list = [
    event({ id: "undated" }),
    event({ id: "1998", when: in1998 }),
    event({ id: "same day, later lane", lane: "note", when: may3 }),
    event({ id: "may", when: may3 }),
    event({ id: "march", when: { text: "3/98", earliest: "1998-03-01", latest: "1998-03-31" } }),
  ];
  const expected = ["march", "1998", "may", "same day, later lane", "undated"];
  fc.assert(
    fc.property(fc.shuffledSubarray(list, { minLength: list.length }), (shuffled) => {
      expect(inLifeOrder(shuffled).map(({ id }) => id)).toEqual(expected);
    }),
  );
});

describe("what was believed at an instant", () => {
  const day = endOfDay("2026-05-03");

  test.each([
    ["recorded the day before", { recordedAt: "2026-05-02T08:00:00.000Z" }, true],
    ["recorded in the day's last millisecond", { recordedAt: "2026-05-03T23:59:59.999Z" }, true],
    ["recorded the day after", { recordedAt: "2026-05-04T00:00:00.000Z" }, false],
    [
      "superseded on that day",
      { recordedAt: "2026-01-01T00:00:00.000Z", supersededAt: "2026-05-03T12:00:00.000Z" },
      false,
    ],
    [
      "superseded the day after",
      { recordedAt: "2026-01-01T00:00:00.000Z", supersededAt: "2026-05-04T00:00:00.000Z" },
      true,
    ],
  ])("%s: %j counts: %s", (_, statement, counts) => {
    expect(believedAt([statement], day)).toHaveLength(counts ? 1 : 0);
  });

  test("now it is whatever nothing has taken the place of", () => {
    const instant = fc.integer({ min: 0, max: 9 }).map((n) => endOfDay(`2026-01-0${n + 1}`.slice(0, 10)));
    const statement = fc
      .tuple(instant, fc.option(instant, { nil: undefined }))
      .map(([recordedAt, supersededAt]) => ({
        recordedAt,
        ...(supersededAt === undefined || supersededAt < recordedAt ? {} : { supersededAt }),
      }));
    fc.assert(
      fc.property(fc.array(statement), (statements) => {
        const standing = statements.filter(({ supersededAt }) => supersededAt === undefined);
        expect(believedAt(statements, "2026-12-31T00:00:00.000Z")).toEqual(standing);
      }),
    );
  });
});

describe("a record taken back by its journal", () => {
  interface Facts {
    readonly built: string | null;
    readonly remarks: string | null;
    readonly options: readonly string[];
  }
  const now: Facts = { built: "3/72", remarks: "blue", options: ["H", "OD"] };
  const at = (day: number) => `2026-01-0${day}T12:00:00.000Z`;
  const steps: readonly JournalStep[] = [
    { at: at(1), after: { built: null } },
    { at: at(2), before: { built: null }, after: { built: "1971" } },
    { at: at(3), before: { built: "1971" }, after: { built: "3/72", options: ["OD"] } },
    { at: at(4), before: { remarks: "not told here" }, after: { remarks: "not told here" } },
  ];
  const then = (day: number) => rewind({ now, steps, instant: at(day), growing: ["options"] });

  test("has each field as the last change up to the instant left it", () => {
    expect([4, 3, 2, 1].map((day) => then(day).fields.built)).toEqual(["3/72", "3/72", "1971", null]);
  });

  test("loses what a file added to a list", () => {
    expect(then(2).fields.options).toEqual(["H"]);
  });

  test("says what the journal does not tell, and only where it was changed since", () => {
    expect(then(3).lost).toEqual(["remarks"]);
    expect(then(4).lost).toEqual([]);
  });

  test("of any changes gives back what every state of it was", () => {
    const value = fc.constantFrom("a", "b", "c", "");
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 8 }), (values) => {
        const instant = (index: number) => `2026-01-01T00:00:0${index}.000Z`;
        const changes = values.slice(1).map((after, index) => ({
          at: instant(index + 1),
          before: { field: values[index] ?? "" },
          after: { field: after },
        }));
        values.forEach((expected, index) => {
          const back = rewind({
            now: { field: values.at(-1) ?? "" },
            steps: changes,
            instant: instant(index),
          });
          expect(back.fields.field).toBe(expected);
        });
      }),
    );
  });
});

describe("rows taken back by the journal", () => {
  const at = (day: number) => `2026-01-0${day}T12:00:00.000Z`;
  const blank = { number: "", from: "" };
  const rows = [{ id: "A", recordedAt: at(1), fields: { number: "GV 12", from: "1971" } }];
  const steps: readonly RowStep[] = [
    {
      at: at(1),
      action: "identity.add",
      rowId: "A",
      before: { number: "", from: "" },
      after: { number: "GV 21" },
    },
    { at: at(2), action: "identity.add", rowId: "B", before: { number: "" }, after: { number: "XX 1" } },
    {
      at: at(3),
      action: "identity.correct",
      rowId: "A",
      before: { number: "GV 21" },
      after: { number: "GV 12" },
    },
    { at: at(4), action: "identity.remove", rowId: "B", before: { number: "XX 1", from: "1980" } },
  ];
  const then = (day: number) =>
    rewindRows({ rows, steps, instant: `2026-01-0${day}T23:00:00.000Z`, blank }).map(
      ({ id, fields }) => `${id} ${fields.number} ${fields.from}`,
    );

  test.each([
    [1, ["A GV 21 1971"], "one number, as it was first written"],
    [2, ["A GV 21 1971", "B XX 1 1980"], "and one that was later taken away"],
    [3, ["A GV 12 1971", "B XX 1 1980"], "the first corrected"],
    [4, ["A GV 12 1971"], "the other gone"],
  ])("on day %d they are %j: %s", (day, expected) => {
    expect(then(day)).toEqual(expected);
  });

  test("before any of them there were none", () => {
    expect(rewindRows({ rows, steps, instant: "2025-12-31T00:00:00.000Z", blank })).toEqual([]);
  });
});
