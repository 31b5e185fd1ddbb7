/** The house's rules that look at one file at a time; each answers with what is wrong, or nothing. */

/** Longest file, in lines. */
const LONGEST = 400;
const CODE = /\.(ts|tsx|mjs|js|css)$/;
const TEXT = /\.(ts|tsx|mjs|js|css|md|json|prisma|sql|sh)$/;
/** Generated code, migrations and the demo's data are as long as they are. */
const LONG_BY_NATURE = /(^|\/)generated\/|^prisma\/migrations\/|^prisma\/(demo|seed)|package-lock\.json$/;
/** A table says on one of its first lines that it is one. */
const TABLE = /^\s*(\/\/|\/?\*+)\s*table:\s*\S/im;
const VAGUE = ["util", "utils", "helper", "helpers", "common", "types", "misc"];

export const TOP_LEVEL = ["apps", "packages", "prisma", "test-e2e"];
const TOP_LEVEL_FILES = [
  "package.json",
  "package-lock.json",
  "turbo.json",
  "biome.json",
  "README.md",
  "DEVELOPERS.md",
  "LICENSE",
];

// Written apart so that this file does not break the rule it holds.
const UNFINISHED = new RegExp(
  `\\b(${["TO", "DO"].join("")}|${["FIX", "ME"].join("")}|${["X", "XX"].join("")})\\b`,
);

function tooLong({ path, text }) {
  if (!CODE.test(path) || LONG_BY_NATURE.test(path)) return [];
  const lines = text.split("\n").length - 1;
  if (lines <= LONGEST || TABLE.test(text.split("\n").slice(0, 8).join("\n"))) return [];
  return [`${lines} lines; ${LONGEST} is the most (a table says "// table: what it lists" at its top)`];
}

/** Parts of a path that frameworks name, not we. */
const FRAMEWORK = /^(\[{1,2}(\.\.\.)?[a-zA-Z]+\]{1,2}|\([a-z-]+\)|@[a-z-]+|_[a-z-]+)$/;
const KEBAB = /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)*$/;

function badName({ path }) {
  const parts = path.split("/");
  if (path.startsWith("prisma/migrations/") || parts.some((part) => part.startsWith("."))) return [];
  const own = ["README.md", "DEVELOPERS.md", "LICENSE", "LICENSE.md"];
  return parts.flatMap((part, index) => {
    const isFile = index === parts.length - 1;
    if (FRAMEWORK.test(part) || (isFile && own.includes(part))) return [];
    const stem = isFile ? part.split(".")[0] : part;
    if (VAGUE.includes(stem)) return [`"${part}" says nothing: name it after the one thing it holds`];
    if (!KEBAB.test(part)) return [`"${part}" is not kebab-case`];
    return [];
  });
}

function strayTopLevel({ path }) {
  const [first, ...rest] = path.split("/");
  if (first.startsWith(".")) return [];
  if (rest.length > 0)
    return TOP_LEVEL.includes(first) ? [] : [`the top level has ${TOP_LEVEL.join(", ")} and no "${first}"`];
  return TOP_LEVEL_FILES.includes(first) ? [] : [`"${first}" has no place at the top level`];
}

function linesThat(text, breaks, says) {
  return text
    .split("\n")
    .flatMap((line, index) => (breaks(line) ? [`line ${index + 1}: ${says(line.trim())}`] : []));
}

function unfinished({ path, text }) {
  if (!TEXT.test(path) || path.endsWith("package-lock.json")) return [];
  return linesThat(
    text,
    (line) => UNFINISHED.test(line),
    (line) => `unfinished: "${line}"`,
  );
}

function focusedTest({ path, text }) {
  if (!/\.(test|spec)\.tsx?$/.test(path)) return [];
  const skipped = /\b(test|it|describe)(\.\w+)*\.(only|skip|todo|fixme)\(/;
  return linesThat(
    text,
    (line) => skipped.test(line),
    (line) => `leaves tests out: "${line}"`,
  );
}

function impure({ path, text }) {
  if (!/^packages\/(calc|register)\/src\//.test(path)) return [];
  const impurities = /\b(Date\.now|Math\.random)\b|\bnew Date\(\s*\)/;
  return linesThat(
    text,
    (line) => impurities.test(line),
    (line) => `not pure: "${line}"`,
  );
}

function misplacedRegression({ path }) {
  const name = /(?:^|\/)regression\/([^/]+)$/.exec(path)?.[1];
  if (!name || /^\d{3}-[a-z0-9-]+(\.db)?\.test\.tsx?$/.test(name)) return [];
  return [`"${name}": a regression test is named NNN-symptom.test.ts`];
}

const RULES = [tooLong, badName, strayTopLevel, unfinished, focusedTest, impure, misplacedRegression];

/**
 * What is wrong with one file.
 *
 * @param {{ path: string, text: string }} file path from the repository's root, with slashes
 * @returns {string[]}
 */
export function faultsOf(file) {
  return RULES.flatMap((rule) => rule(file));
}
