import { expect, test } from "vitest";
import { readWords } from "./policy";

test("a dash between two words is no word of its own; a sign that somebody looks for is", () => {
  expect(readWords("S3 - 0237").map(({ folded }) => folded)).toEqual(["s3", "0237"]);
  expect(readWords("- / ·")).toEqual([]);
  expect(readWords("%").map(({ folded }) => folded)).toEqual(["%"]);
});
