import { expect, test } from "vitest";
import { faultsOf } from "./house-rule.mjs";
import { testOnlyImports, unlawfulDependencies } from "./import-law.mjs";

const unfinished = `// ${["TO", "DO"].join("")}: later`;

test.each([
  ["packages/calc/src/utils.ts", "", /"utils.ts" says nothing/],
  ["packages/calc/src/helpers/bar.ts", "", /"helpers" says nothing/],
  ["packages/calc/src/antiRollBar.ts", "", /not kebab-case/],
  ["apps/web/src/app/Car/page.tsx", "", /"Car" is not kebab-case/],
  ["scripts/run.mjs", "", /no "scripts"/],
  ["notes.txt", "", /no place at the top level/],
  ["packages/calc/src/bar.ts", unfinished, /line 1: unfinished/],
  ["packages/calc/src/bar.ts", "const now = Date.now();", /line 1: not pure/],
  ["packages/register/src/day.ts", "\nconst now = new Date();", /line 2: not pure/],
  ["packages/calc/src/bar.test.ts", 'test.only("x", () => {});', /leaves tests out/],
  ["packages/calc/src/bar.ts", "x\n".repeat(401), /401 lines; 400 is the most/],
  ["packages/calc/regression/bar.test.ts", "", /NNN-symptom/],
])("%s with %j is a breach", (path, text, words) => {
  expect(faultsOf({ path, text })).toEqual([expect.stringMatching(words)]);
});

test.each([
  ["apps/web/src/app/(club)/[club]/cars/[...rest]/page.tsx", ""],
  ["prisma/migrations/20250101000000_first/migration.sql", "x\n".repeat(3000)],
  [
    "packages/register/src/characteristic/table.ts",
    `// table: the built-in characteristics\n${"x\n".repeat(900)}`,
  ],
  ["packages/calc/src/bar.ts", "x\n".repeat(400)],
  ["packages/calc/regression/004-zero-bore.test.ts", ""],
  ["packages/service/src/day.ts", "new Date()"],
  ["packages/db/src/x.db.test.ts", 'describe.skipIf(!isRoot)("as root", () => {});'],
  ["README.md", ""],
  [".ci/run", ""],
])("%s is in order", (path, text) => {
  expect(faultsOf({ path, text })).toEqual([]);
});

test("a package.json that names more than the law lets it is told", () => {
  const manifest = {
    name: "@trunnion/web",
    dependencies: { "@trunnion/api": "*", "@trunnion/db": "*", next: "1" },
  };
  expect(unlawfulDependencies(manifest)).toEqual([
    expect.stringMatching(/web may not depend on @trunnion\/db/),
  ]);
  expect(unlawfulDependencies({ name: "@trunnion/new" })).toEqual([
    expect.stringMatching(/not in .*import-law/),
  ]);
});

test("what is there for tests only is told when a source imports it", () => {
  const manifest = { name: "@trunnion/service", dependencies: { "@trunnion/db": "*" } };
  const text =
    'import { Database } from "@trunnion/db";\nimport { aCar } from "@trunnion/fixtures";\nawait import("@trunnion/db/gate");';
  expect(testOnlyImports(text, manifest)).toEqual(["@trunnion/fixtures"]);
});
