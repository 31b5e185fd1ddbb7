import { expect, test } from "vitest";
import { standardThreads } from "./thread-list";

test("the list holds each thread of the standards once, as it is written, right-hand", () => {
  const names = standardThreads().map(({ canonical }) => canonical);
  expect(new Set(names).size).toBe(names.length);
  // One of each standard: ISO 261 coarse and fine, UN, BS 84, BS 93.
  for (const name of ["M10x1.5", "M10x1.25", "3/8-24 UNF", "5/16-18 UNC", "2 BA", "0 BA", "16 BA"])
    expect(names).toContain(name);
  expect(names.filter((name) => name.endsWith(" BSF")).length).toBeGreaterThan(10);
  expect(names.filter((name) => name.endsWith(" BSW")).length).toBeGreaterThan(10);
  expect(names.filter((name) => / BA$/.test(name))).toHaveLength(17);
  expect(names.filter((name) => name.endsWith("LH"))).toEqual([]);
});
