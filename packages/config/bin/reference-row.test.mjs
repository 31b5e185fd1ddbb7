import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { exempt, ids } from "./reference-row.mjs";

const packages = new URL("../../", import.meta.url);
const tests = readdirSync(packages, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .flatMap(({ name }) => readTests(new URL(`${name}/src/`, packages)));

function readTests(folder) {
  try {
    return readdirSync(folder, { recursive: true })
      .filter((path) => path.endsWith(".test.ts"))
      .map((path) => readFileSync(new URL(path, folder), "utf8"));
  } catch (error) {
    if (error.code === "ENOENT") return [];
    throw error;
  }
}

const cited = new Set(tests.flatMap((text) => text.match(/\b[A-Z]{3}-\d{2}\b/g) ?? []));

describe("the reference values", () => {
  test("are all there: 264 rows, each once", () => {
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toHaveLength(264);
  });

  test("are each cited by a test, or exempt with a reason", () => {
    expect(ids.filter((id) => !cited.has(id) && !(id in exempt))).toEqual([]);
  });

  test("are exempt only where no test cites them, and because of something", () => {
    expect(Object.keys(exempt).filter((id) => cited.has(id) || !ids.includes(id))).toEqual([]);
    for (const reason of Object.values(exempt)) expect(reason.length).toBeGreaterThan(20);
  });

  test("no test cites a row that there is not", () => {
    const topics = new Set(ids.map((id) => id.slice(0, 3)));
    expect([...cited].filter((id) => topics.has(id.slice(0, 3)) && !ids.includes(id))).toEqual([]);
  });
});
