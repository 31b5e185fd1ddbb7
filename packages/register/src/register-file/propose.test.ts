import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { ContentBasis } from "./content";
import { doubtsBeside, doubtsOf, looksGarbled } from "./doubt";
import { readHeadings } from "./heading";
import { textLikeness } from "./likeness";
import { proposeColumns } from "./propose";
import { columnPlace, readRow } from "./row";

const basis: ContentBasis = {
  book: builtInBook,
  patterns: [{ series: "Series 2", prefix: "S2-", digits: 4, first: 1, last: 398, suffixes: ["R"] }],
  seriesNames: ["Series 2", "series-2"],
  today: "2026-11-25",
  unitSystem: "metric",
};

function proposal(heading: string, cells: readonly string[] = []) {
  const [one] = proposeColumns(
    [heading],
    cells.map((cell) => [cell]),
    basis,
  );
  if (!one) throw new Error("nothing proposed");
  return one;
}

describe("a heading", () => {
  test.each([
    ["Chassis No.", "Chassis", "sure"],
    ["VIN", "Chassis", "likely"],
    ["Chasis number", "Chassis", "likely"],
    ["Reg. mark", "Registration", "likely"],
    ["Kept by", "Keeper", "likely"],
    ["Year built", "Built", "likely"],
    ["Date first registered", "First registered", "likely"],
    ["Owned since", "Kept since", "likely"],
    ["now: front camber left", "now: Front camber left", "sure"],
    ["Front camber L", "now: Front camber left", "likely"],
    ["Front camber", "now: Front camber", "likely"],
    ["Original colour", "as built: Body colour", "sure"],
    ["Colour", "now: Body colour", "likely"],
    ["Front ARB (mm)", "now: Front anti-roll bar diameter", "likely"],
    ["Frnt anti roll bar diametr", "now: Front anti-roll bar diameter", "possible"],
    ["Characteristics compared", "leave out", "sure"],
    ["Club magazine", "keep as remarks", "none"],
    ["", "keep as remarks", "none"],
  ])("%j is proposed as %j, %s", (heading, as, certainty) => {
    const made = proposal(heading);
    expect([made.as, made.certainty]).toEqual([as, certainty]);
    expect(made.reason).not.toBe("");
  });

  test("gives the unit of its bare numbers where it names one", () => {
    expect(proposal("Front ARB (mm)", ["16", "20"])).toMatchObject({ unit: "mm", certainty: "likely" });
    expect(proposal("Front ARB (mm)", ["16"]).bare).toBeUndefined();
  });

  test("gives no unit where it names none: it is asked for, with the number that needs it", () => {
    const made = proposal("Front bar", ["9/16 in", "16", "20 mm"]);
    expect(made.as).toBe("now: Front anti-roll bar diameter");
    expect(made.unit).toBeUndefined();
    expect(made.bare).toBe("16");
    expect(made.units.slice(0, 2)).toEqual(["mm", "in"]);
  });

  test("of dates asks what day numbers count from", () => {
    expect(proposal("Built", ["26299", "26300"])).toMatchObject({
      as: "Built",
      bare: "26299",
      units: ["days from 1900", "days from 1904"],
    });
  });
});

describe("the cells of a column", () => {
  test("bear its heading out, or make it less sure, and the reason says so", () => {
    expect(proposal("Year", ["1971", "1972"]).reason).toContain("2 of 2 cells read as such");
    const wrong = proposal("Built", ["Kvitnes", "Torget", "1971"]);
    expect(wrong).toMatchObject({ as: "Built", certainty: "likely" });
    expect(wrong.reason).toContain("only 1 of 3 cells");
  });

  test("say more than a heading that is only nearly another word", () => {
    const cells = ["S2-0001", "S2-0100R", "S2-0200"];
    expect(proposal("Number", cells)).toMatchObject({ as: "Chassis", certainty: "likely" });
    expect(proposal("Number", ["GR 1", "GR 2"]).as).toBe("Registration");
  });

  test.each([
    ["chassis numbers", ["S2-0001", "S2-0100R", "s2 0200", "?"], "Chassis", "likely"],
    ["e-mail addresses", ["a@example.test", "b@example.test"], "Keeper e-mail", "likely"],
    ["status words", ["in use", "laid up", "scrapped"], "Status", "likely"],
    ["the club's series", ["Series 2", "series-2"], "Series", "likely"],
  ])("%s say what it is where the heading does not", (_, cells, as, certainty) => {
    expect(proposal("Column1", cells)).toMatchObject({ as, certainty });
  });

  test("that are dates, figures or answers to several things are told, and asked about, not guessed", () => {
    expect(proposal("Column1", ["3/72", "1971", "c. 1970"])).toMatchObject({
      as: "keep as remarks",
      certainty: "none",
    });
    expect(proposal("Column1", ["3/72", "1971", "c. 1970"]).reason).toMatch(/dates: say which/);
    expect(proposal("Zz", ["28 psi", "30 psi"]).reason).toMatch(/figures such as 28 psi/);
  });
});

describe("two columns of one meaning", () => {
  test("are not both taken: the surer has it, and the other says which", () => {
    const made = proposeColumns(["VIN", "Chassis"], [["S2-0001", "S2-0001"]], basis);
    expect(made.map(({ as }) => as)).toEqual(["keep as remarks", "Chassis"]);
    expect(made[0]?.reason).toBe('column B holds "Chassis" already');
  });
});

describe("likeness of texts", () => {
  test("is 1 for equal, 0 for strange ones, and the same both ways", () => {
    expect(textLikeness("camber", "camber")).toBe(1);
    expect(textLikeness("abc", "xyz")).toBe(0);
    expect(textLikeness("camber", "cambre")).toBe(textLikeness("cambre", "camber"));
    // night/nacht share 1 of their bigrams' kind; with marked ends in threes: "  n" of 6 and 6, 2*1/12 by hand.
    expect(textLikeness("night", "nacht")).toBeCloseTo((2 * 2) / 12, 10);
  });
});

describe("doubts", () => {
  const series = { name: "Series 2", builtFrom: "1970-03-01", builtTo: "1973-11-30" };
  const told = (headings: readonly string[], cells: readonly string[]) => {
    const columns = readHeadings(headings, builtInBook);
    const read = readRow(columns, cells, basis.today);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const place = (wanted: Parameters<typeof columnPlace>[1]) => columnPlace(columns, wanted);
    return { ...read, columns, place, all: [...read.doubts, ...doubtsOf(read.row, { series, place })] };
  };

  test.each([
    [
      ["Chassis", "Built", "Kept since"],
      ["x", "1971", "1969"],
      'C "Kept since"',
      "1969",
      "kept since 1969, before it was built (1971)",
    ],
    [
      ["Chassis", "Built", "First registered"],
      ["x", "3/72", "2/72"],
      'C "First registered"',
      "2/72",
      "first registered 2/72, before it was built (3/72)",
    ],
    [
      ["Chassis", "Built"],
      ["x", "1977"],
      'B "Built"',
      "1977",
      "built 1977, when Series 2 was not: it was built 1 Mar 1970 to 30 Nov 1973",
    ],
    [
      ["Chassis", "now: Front camber left"],
      ["x", "-6°"],
      'B "now: Front camber left"',
      "-6°",
      "unusual; -4° to 2° is usual",
    ],
    [
      ["Chassis", "as built: Front anti-roll bar diameter [mm]"],
      ["x", "35"],
      'B "as built: Front anti-roll bar diameter [mm]"',
      "35",
      "unusual; 9 mm to 30 mm is usual",
    ],
  ])("%j %j", (headings, cells, column, found, text) => {
    expect(told(headings, cells).all).toEqual([{ column, found, text }]);
  });

  test("do not take the place of a refusal: what nobody can believe is left out, with what would be right", () => {
    const columns = readHeadings(["Chassis", "now: Front camber left"], builtInBook);
    expect(readRow(columns, ["x", "45°"], basis.today)).toMatchObject({
      ok: false,
      problems: [{ column: 'B "now: Front camber left"', found: "45°", expected: "-8° to 8°" }],
    });
  });

  test("are raised by when the register says it was built, where the row does not say it", () => {
    const known = { text: "3/72", earliest: "1972-03-01", latest: "1972-03-31" };
    const beside = (headings: readonly string[], cells: readonly string[]) => {
      const { row, place } = told(headings, cells);
      return doubtsBeside(row, known, place).map(({ text }) => text);
    };
    expect(beside(["Chassis", "Kept since"], ["x", "2/72"])).toEqual([
      "kept since 2/72, before it was built (3/72)",
    ]);
    expect(beside(["Chassis", "Kept since"], ["x", "3/72"])).toEqual([]);
    // The row corrects what the register says.
    expect(beside(["Chassis", "Built", "Kept since"], ["x", "1970", "2/72"])).toEqual([]);
  });

  test("are raised of numbers and marks too, without quoting what may be a name", () => {
    expect(told(["Chassis", "Registration"], ["x", "GÃ˜ 101"]).all).toEqual([
      { text: expect.stringMatching(/^registration: letters look spoilt/) },
    ]);
  });

  test("are not raised where the dates allow it, or at the ends of what is usual", () => {
    expect(told(["Chassis", "Built", "First registered"], ["x", "1971", "3/71"]).all).toEqual([]);
    expect(told(["Chassis", "Built", "Kept since"], ["x", "c. 1971", "1970"]).all).toEqual([]);
    expect(told(["Chassis", "Built"], ["x", "1970"]).all).toEqual([]);
    expect(told(["Chassis", "now: Front camber"], ["x", "-4°"]).all).toEqual([]);
    expect(told(["Chassis", "now: Front camber"], ["x", "2°"]).all).toEqual([]);
  });

  test.each([
    ["Ã˜rnhÃ¸i", true],
    ["Å½eljka", false],
    ["dÃ©chirÃ©", true],
    ["a dash â€“ here", true],
    ["J?rgen", true],
    ["Jørgen?", false],
    ["Ørnhøi", false],
    ["São João", false],
    ["Željka Grzędowin", false],
    ["Kept by whom? Nobody knows", false],
  ])("%j looks garbled: %s", (text, garbled) => {
    expect(looksGarbled(text)).toBe(garbled);
  });

  test("of spoilt letters do not quote the person's name", () => {
    const [doubt] = told(["Chassis", "Keeper"], ["x", "J?rgen Ã˜rn"]).all;
    expect(doubt?.text).toMatch(/^keeper: letters look spoilt/);
    expect(JSON.stringify(doubt)).not.toContain("rgen");
  });
});
