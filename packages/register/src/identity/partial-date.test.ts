import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dayOf, daysBetween, daysInMonth, earliestDay, shiftDays, shiftYears } from "./calendar";
import { parsePartialDate, partialDateSchema } from "./partial-date";
import { sayDay } from "./say-day";

const today = "2026-11-25";

function read(entered: string, on = today) {
  const parsed = parsePartialDate(entered, { today: on });
  if (!parsed.ok) throw new Error(parsed.problem.message);
  return parsed.date;
}

function problemOf(entered: string) {
  const parsed = parsePartialDate(entered, { today });
  if (parsed.ok) throw new Error(`"${entered}" was read`);
  return parsed.problem;
}

describe("a partial date", () => {
  test.each([
    ["1971", "1971-01-01", "1971-12-31", "year"],
    ["c. 1971", "1970-01-01", "1972-12-31", "circa"],
    ["ca 1971", "1970-01-01", "1972-12-31", "circa"],
    ["circa March 1971", "1970-03-01", "1972-03-31", "circa"],
    ["c. Feb 1971", "1970-02-01", "1972-02-29", "circa"],
    ["1971?", "1970-01-01", "1972-12-31", "circa"],
    ["~1971", "1970-01-01", "1972-12-31", "circa"],
    ["before March 1972", "1900-01-01", "1972-02-29", "before"],
    ["by 3/72", "1900-01-01", "1972-03-31", "before"],
    ["after 1970", "1971-01-01", "2026-11-25", "after"],
    ["since 1970", "1970-01-01", "2026-11-25", "after"],
    ["3/72", "1972-03-01", "1972-03-31", "month"],
    ["March 1972", "1972-03-01", "1972-03-31", "month"],
    ["mar. 72", "1972-03-01", "1972-03-31", "month"],
    ["12.3.1972", "1972-03-12", "1972-03-12", "day"],
    ["12/3/72", "1972-03-12", "1972-03-12", "day"],
    ["12th March 1972", "1972-03-12", "1972-03-12", "day"],
    ["March 12, 1972", "1972-03-12", "1972-03-12", "day"],
    ["1972-03-12", "1972-03-12", "1972-03-12", "day"],
    ["29.2.72", "1972-02-29", "1972-02-29", "day"],
    ["1972-03", "1972-03-01", "1972-03-31", "month"],
    ["1971/72", "1971-01-01", "1972-12-31", "circa"],
    ["between 1969 and 1972", "1969-01-01", "1972-12-31", "circa"],
    ["1970s", "1970-01-01", "1979-12-31", "circa"],
    ["spring 1971", "1971-03-01", "1971-05-31", "month"],
    ["late 1971", "1971-09-01", "1971-12-31", "month"],
  ])("%s is from %s to %s, known to the %s", (text, earliest, latest, precision) => {
    expect(read(text)).toEqual({ text, earliest, latest, precision });
  });

  test("takes two-digit years of the near future for that, not for the last century's", () => {
    expect(read("3/26").earliest).toBe("2026-03-01");
    expect(problemOf("3/27").code).toBe("FUTURE");
    expect(read("3/37").earliest).toBe("1937-03-01");
    expect(read("3/72", "1975-06-01").earliest).toBe("1972-03-01");
  });

  test("that reaches beyond today is cut there, and one wholly beyond is refused", () => {
    expect(read("2026")).toMatchObject({ earliest: "2026-01-01", latest: today });
    expect(read("c. 2026").latest).toBe(today);
    expect(problemOf("26.11.2026")).toEqual({
      code: "FUTURE",
      message: '"26.11.2026" lies in the future',
      expected: "a day up to 2026-11-25, with the year in four figures",
    });
    expect(problemOf("after 2026").code).toBe("FUTURE");
  });

  test.each([
    "",
    "soon",
    "30.2.1971",
    "29.2.1971",
    "3/14/1972",
    "13/1971",
    "Marmalade 1971",
    "winter 1971",
    "1971 BC",
    "x".repeat(99),
  ])("%s is refused", (entered) => {
    expect(["EMPTY", "NOT_A_DATE"]).toContain(problemOf(entered).code);
  });

  test("before 1900 is refused", () => {
    expect(problemOf("1899").code).toBe("TOO_EARLY");
    expect(problemOf("before 1900").code).toBe("TOO_EARLY");
  });

  test("refuses a today that is none", () => {
    expect(() => parsePartialDate("1971", { today: "today" })).toThrow('"today" is no ISO day');
  });
});

describe("by property", () => {
  const day = fc
    .date({
      min: new Date("1900-01-02T00:00:00Z"),
      max: new Date("2026-11-25T00:00:00Z"),
      noInvalidDate: true,
    })
    .map((date) => date.toISOString().slice(0, 10));
  const words = fc.constantFrom("", "c. ", "before ", "after ", "by ", "since ");
  const form = fc.constantFrom(
    (iso: string) => iso,
    (iso: string) => iso.split("-").reverse().map(Number).join("."),
    (iso: string) => iso.slice(0, 7),
    (iso: string) => iso.slice(0, 4),
    (iso: string) => sayDay(iso),
    (iso: string) => `${Number(iso.slice(5, 7))}/${iso.slice(0, 4)}`,
  );

  test("what is read is a span within the register's time, and a plain one holds the day it was written for", () => {
    const property = fc.property(day, words, form, (iso, word, write) => {
      const parsed = parsePartialDate(`${word}${write(iso)}`, { today });
      if (!parsed.ok) {
        expect(["FUTURE", "TOO_EARLY"]).toContain(parsed.problem.code);
        return;
      }
      const { earliest, latest } = parsed.date;
      expect(earliest <= latest).toBe(true);
      expect(earliest >= earliestDay && latest <= today).toBe(true);
      expect(partialDateSchema.safeParse(parsed.date).success).toBe(true);
      if (word === "" || word === "c. ") expect(earliest <= iso && iso <= latest).toBe(true);
    });
    fc.assert(property, { numRuns: 500 });
  });

  const scraps = fc
    .array(
      fc.oneof(
        fc.constantFrom("c. ", "before ", "12", "31", "2", "1971", "/", ".", "-", "march", " ", "?", "s"),
        fc.string(),
      ),
    )
    .map((parts) => parts.join(""));

  test("never throws, whatever is entered", () => {
    fc.assert(
      fc.property(scraps, (entered) => {
        const parsed = parsePartialDate(entered, { today });
        expect(parsed.ok || parsed.problem.expected !== "").toBe(true);
      }),
    );
  });

  test("days shift there and back, and the distance is the shift", () => {
    fc.assert(
      fc.property(day, fc.integer({ min: -40_000, max: 40_000 }), (iso, days) => {
        expect(shiftDays(shiftDays(iso, days), -days)).toBe(iso);
        expect(daysBetween(iso, shiftDays(iso, days))).toBe(days);
      }),
    );
  });
});

describe("the calendar", () => {
  // Gregorian rule: centuries are leap years only every fourth time.
  test.each([
    [1900, 28],
    [1972, 29],
    [2000, 29],
    [2026, 28],
  ])("February %d has %d days", (year, days) => {
    expect(daysInMonth(year, 2)).toBe(days);
    expect(dayOf(year, 2, days)).toBe(`${year}-02-${days}`);
    expect(dayOf(year, 2, days + 1)).toBeUndefined();
  });

  test("29 February a year later is the 28th", () => {
    expect(shiftYears("1972-02-29", 1)).toBe("1973-02-28");
    expect(shiftYears("1972-02-29", 4)).toBe("1976-02-29");
  });

  test("a day is said in words, and what is none is refused", () => {
    expect(sayDay("1998-03-12")).toBe("12 Mar 1998");
    expect(() => sayDay("1998-13-12")).toThrow(RangeError);
  });
});
