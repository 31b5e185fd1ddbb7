import { describe, expect, test } from "vitest";
import { readSearch } from "./said";

test("a dash between two words is no word of its own; a sign that somebody looks for is", () => {
  expect(readSearch("S3 - 0237").words.map(({ folded }) => folded)).toEqual(["s3", "0237"]);
  expect(readSearch("- / ·").words).toEqual([]);
  expect(readSearch("%").words.map(({ folded }) => folded)).toEqual(["%"]);
});

const ofSeries = (slug: string, name: string, numberPrefix: string) => ({
  slug,
  name,
  marque: "Sandvær",
  numberPrefix,
  numberDigits: 4,
});
const series = [ofSeries("series-2", "Series 2", "S2-"), ofSeries("series-3", "Series 3", "S3-")];
const read = (search: string) => readSearch(search, series);

describe("a series in a search", () => {
  test.each([
    ["fjord blue series 2", ["series-2"], ["fjord", "blue"]],
    ["Series-2 fjord", ["series-2"], ["fjord"]],
    ["series2", ["series-2"], []],
    ["series 23", [], ["series", "23"]],
    ['"series 2" bonnet', [], ["series 2", "bonnet"]],
    ["“fjord  blue”", [], ["fjord blue"]],
    ['"fjord', [], ["fjord"]],
    ['9/16" 1/2"', [], ['9/16"', '1/2"']],
  ])("%j names %j and leaves the words %j", (search, named, words) => {
    const said = read(search);
    expect(said.named.flatMap((one) => one.series)).toEqual(named);
    expect(said.words.map(({ folded }) => folded)).toEqual(words);
  });

  test("is meant by the beginning of its name or marque too, beside what stands on the record", () => {
    expect(read("ser").words[0]?.series).toEqual(["series-2", "series-3"]);
    expect(read("sandvaer").words[0]?.series).toEqual(["series-2", "series-3"]);
    expect(read("blue").words[0]?.series).toEqual([]);
    expect(read("se").words[0]?.series).toEqual([]);
  });
});

test("a chassis number may be written without its leading zeros", () => {
  expect(["s3-338", "S3338", "s3 338", "S3-0338", "338"].map((one) => read(one).words[0]?.number)).toEqual([
    "S30338",
    "S30338",
    undefined,
    undefined,
    undefined,
  ]);
});

test("words beyond the eighth are told as passed over, and one typed twice counts once", () => {
  const said = read("a b c d e f g h a i j");
  expect(said.words).toHaveLength(8);
  expect(said.passedOver).toEqual(["i", "j"]);
});
