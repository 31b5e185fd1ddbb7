import { expect, test } from "vitest";
import { readWords } from "./policy";

test("a dash between two words is no word of its own, and nothing but signs is no word at all", () => {
  expect(readWords("S3 - 0237").map(({ folded }) => folded)).toEqual(["s3", "0237"]);
  expect(readWords("- / ·")).toEqual([]);
});
