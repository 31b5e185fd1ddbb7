import { describe, expect, test } from "vitest";
import { askedOf } from "./asked";

describe("what an address asks of the journal", () => {
  test("is taken as it is where it can be read", () => {
    const given = {
      car: " S1-0004 ",
      person: "none",
      action: "car.add",
      from: "2026-01-01",
      to: "2026-05-03",
      before: "12",
    };
    expect(askedOf(given)).toEqual({ query: { ...given, car: "S1-0004" }, errors: {} });
  });

  test.each([
    [{ person: "x'; --" }, "no person"],
    [{ action: "car add" }, "no action"],
    [{ before: "-1" }, "no place"],
    [{ before: "1e9" }, "no place"],
    [{ check: "all" }, "nothing to check"],
    [{ car: ["a", "b"] }, "two of one"],
    [{ car: "" }, "nothing"],
  ])("%j is passed over: %s", (given, _why) => {
    expect(askedOf(given)).toEqual({ query: {}, errors: {} });
  });

  test("a day that is none, and an end before the beginning, are told at their fields", () => {
    expect(askedOf({ from: "2026-02-30" }).errors.from).toContain('"2026-02-30" is no day');
    expect(askedOf({ from: "2026-05-03", to: "2026-05-01" }).errors.to).toContain(
      "2026-05-01 lies before 2026-05-03",
    );
    expect(askedOf({ from: "2026-05-03", to: "2026-05-03" }).errors).toEqual({});
  });
});
