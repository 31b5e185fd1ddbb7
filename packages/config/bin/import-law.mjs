/**
 * Which of our packages a package may name in its own package.json, and which only for its tests.
 * `turbo boundaries` holds imports to what is named there, and its tag rules reach through to what those import;
 * this table is the narrower law: db, say, is no business of the web application's, though service has it.
 */
export const importLaw = {
  "@trunnion/config": { may: [], tests: [] },
  "@trunnion/calc": { may: [], tests: [] },
  "@trunnion/register": { may: ["calc"], tests: [] },
  "@trunnion/db": { may: [], tests: [] },
  "@trunnion/service": { may: ["db", "register", "calc"], tests: ["fixtures"] },
  "@trunnion/sheets": { may: ["register", "calc"], tests: [] },
  "@trunnion/api": { may: ["service", "sheets", "register", "calc"], tests: ["fixtures", "db"] },
  "@trunnion/fixtures": { may: ["db", "register", "calc"], tests: [] },
  "@trunnion/web": { may: ["api", "register", "calc"], tests: [] },
  "@trunnion/cli": { may: ["db", "prisma", "register", "calc", "service", "sheets"], tests: ["fixtures"] },
  "@trunnion/prisma": { may: ["db", "fixtures", "register", "calc", "service"], tests: [] },
  "@trunnion/test-e2e": { may: [], tests: ["db", "fixtures", "register", "calc"] },
};

const SCOPE = "@trunnion/";

function ours(dependencies = {}) {
  return Object.keys(dependencies).filter((name) => name.startsWith(SCOPE));
}

/**
 * Where one package.json names more than the law lets it.
 *
 * @param {{ name: string, dependencies?: object, devDependencies?: object }} manifest
 * @returns {string[]} one line per breach
 */
export function unlawfulDependencies({ name, dependencies, devDependencies }) {
  const law = importLaw[name];
  if (!law) return [`${name} is not in packages/config/bin/import-law.mjs: say there what it may import`];
  const may = law.may.map((short) => SCOPE + short);
  const tests = [...may, ...law.tests.map((short) => SCOPE + short), `${SCOPE}config`];
  const breaches = [
    ...ours(dependencies).filter((dependency) => !may.includes(dependency)),
    ...ours(devDependencies).filter((dependency) => !tests.includes(dependency)),
  ];
  return breaches.map(
    (dependency) => `${name} may not depend on ${dependency}: see packages/config/bin/import-law.mjs`,
  );
}

/**
 * Which of our packages a source file imports although its package needs them for tests only.
 *
 * @param {string} text
 * @param {{ dependencies?: object }} manifest
 */
export function testOnlyImports(text, { name, dependencies }) {
  const imported = [...text.matchAll(/(?:from|import)\s*\(?\s*"(@trunnion\/[\w-]+)[^"]*"/g)].map(
    (match) => match[1],
  );
  return [...new Set(imported)].filter((one) => one !== name && !ours(dependencies).includes(one));
}
