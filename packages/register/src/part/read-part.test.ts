import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { Invalid, Problems } from "../refusal/invalid";
import { type FeatureRow, type FitRow, readPartFeatures, readPartFits } from "./read-part";

function told(read: (problems: Problems) => unknown) {
  const problems = new Problems();
  const found = read(problems);
  try {
    problems.throwIfAny();
  } catch (error) {
    if (error instanceof Invalid) return error.problems.map(({ field, message }) => [field, message]);
  }
  return found;
}

const row = (about: string, value: string, more: Partial<FeatureRow> = {}): FeatureRow => ({
  about,
  value,
  kind: "characteristic",
  tells: false,
  ...more,
});
const features = (...rows: readonly FeatureRow[]) =>
  told((problems) => readPartFeatures(rows, { book: builtInBook, problems }));

describe("what matters about a part", () => {
  test("is read by the dictionary where it names one, and else by its kind at its spot; empty rows are none", () => {
    const read = features(
      row("front caliper bolts", "m12 x 1.25", { tells: true }),
      row("", ""),
      row("Bolt to upright", "3/8 UNF", { kind: "thread" }),
      row("between eyes", "12 1/2 in", { kind: "length" }),
      row("rack end", "stops 4 mm early", { kind: "stop" }),
    );
    expect(read).toMatchObject([
      {
        kind: "characteristic",
        characteristic: "front.caliper.boltThread",
        tells: true,
        value: { canonical: "M12x1.25" },
      },
      { kind: "thread", label: "Bolt to upright", value: { canonical: "3/8-24 UNF" } },
      { kind: "length", value: { kind: "quantity", entered: "12 1/2 in" } },
      { kind: "stop", value: { text: "stops 4 mm early" } },
    ]);
  });

  test.each([
    ["a value without a name", row("", "M10"), "features.0.about"],
    ["a name without a value", row("Front disc face", ""), "features.0.value"],
    ["a name that is none of the dictionary", row("bolt to upright", "M10"), "features.0.about"],
    [
      "a spot of its own to be seen on a record",
      row("bolt", "M10", { kind: "thread", tells: true }),
      "features.0.tells",
    ],
    ["a thread that is none", row("bolt", "M10x9", { kind: "thread" }), "features.0.value"],
    ["an impossible length", row("eyes", "long", { kind: "length" }), "features.0.value"],
  ])("refuses %s at its field", (_, one, field) => {
    expect(features(one)).toEqual([[field, expect.stringMatching(/./)]]);
  });

  test("refuses one spot said twice, however it is written", () => {
    const twice = features(row("Front disc face", "plain"), row("front.disc.face", "drilled"));
    expect(twice).toEqual([["features.1.about", '"front.disc.face" stands here twice: keep one of them.']]);
  });
});

const mark = {
  slug: "mark-1",
  name: "Mark 1",
  pattern: { series: "Mark 1", prefix: "M1-", digits: 3, first: 1, last: 120, suffixes: [] },
};
const rowOf = (standing: FitRow["standing"], serialFrom = "", serialTo = "", series = "mark-1"): FitRow => ({
  series,
  standing,
  serialFrom,
  serialTo,
  note: "",
});
const fits = (...rows: readonly FitRow[]) =>
  told((problems) => readPartFits(rows, { series: [mark], problems }));

describe("which series a part fits", () => {
  test("may change in the run of the series; rows that say nothing are none", () => {
    expect(fits(rowOf("original", "", "60"), rowOf(""), rowOf("altered", "61"))).toEqual([
      { series: "mark-1", standing: "original", serialTo: 60 },
      { series: "mark-1", standing: "altered", serialFrom: 61 },
    ]);
  });

  test.each([
    ["a serial past the last", [rowOf("fits", "1", "121")], "fits.0.serialTo"],
    ["a serial that is no number", [rowOf("fits", "M1-5")], "fits.0.serialFrom"],
    ["a span turned round", [rowOf("fits", "60", "50")], "fits.0.serialTo"],
    ["two spans that overlap", [rowOf("fits", "", "60"), rowOf("original", "60")], "fits.1.standing"],
    ["a series of another club", [rowOf("fits", "", "", "mark-9")], "fits.0.series"],
  ])("refuses %s at its field", (_, rows, field) => {
    expect(fits(...rows)).toEqual([[field, expect.stringMatching(/./)]]);
  });
});
