import { describe, expect, test } from "vitest";
import { RateLimit } from "./rate-limit";

describe("a limit on how often", () => {
  test("lets so many through, says how long to wait, and begins again after the span", () => {
    const limit = new RateLimit({ most: 2, within: 1000 });
    expect([limit.take("a", 0), limit.take("a", 100), limit.take("a", 400)]).toEqual([0, 0, 600]);
    expect(limit.take("b", 400)).toBe(0);
    expect(limit.take("a", 1000)).toBe(0);
  });

  test("goes on holding whoever it holds when very many others come", () => {
    const limit = new RateLimit({ most: 1, within: 1_000_000 });
    for (let name = 0; name < 9_999; name += 1) limit.take(`n${name}`, 0);
    limit.take("last", 1);
    expect(limit.take("last", 2)).toBeGreaterThan(0);
    // One more than is kept: the oldest is forgotten, the last still held.
    limit.take("more", 3);
    expect(limit.take("last", 4)).toBeGreaterThan(0);
    expect(limit.take("n0", 5)).toBe(0);
  });
});
