import { describe, expect, test } from "vitest";
import { readGenerateOptions } from "./generate";

describe("what to generate", () => {
  test("is read as whole numbers", () => {
    expect(readGenerateOptions({ clubs: "2", cars: "1000", seed: "0" })).toEqual({
      clubs: 2,
      cars: 1000,
      seed: 0,
    });
  });

  test.each([
    [{ clubs: "0", cars: "10", seed: "1" }, "clubs", "no club at all"],
    [{ clubs: "1", cars: "1000001", seed: "1" }, "cars", "a number of eight digits"],
    [{ clubs: "1", cars: "ten", seed: "1" }, "cars", "a word"],
    [{ clubs: "1", cars: "10", seed: "-1" }, "seed", "below zero"],
    [{ clubs: "1", cars: "10", seed: "1.5" }, "seed", "no whole number"],
  ])("%j is refused at %s: %s", (given, option) => {
    expect(() => readGenerateOptions(given)).toThrow(
      expect.objectContaining({ issues: [expect.objectContaining({ path: [option] })] }),
    );
  });
});
