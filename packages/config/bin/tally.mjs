// Counts what test reports say. A report that is missing, or tells of nothing, is itself a failure.
import { stripVTControlCharacters } from "node:util";

/** @typedef {{ passed: number, failures: { title: string, message: string }[] }} Tally */

function firstLines(text, count = 12) {
  return stripVTControlCharacters(text ?? "")
    .trim()
    .split("\n")
    .slice(0, count)
    .join("\n");
}

/**
 * @param {any} report vitest's JSON
 * @returns {Tally}
 */
export function tallyVitest(report) {
  const failures = report.testResults.flatMap((file) => {
    const failed = file.assertionResults.filter(({ status }) => status === "failed");
    if (file.status === "failed" && failed.length === 0) {
      return [{ title: file.name, message: firstLines(file.message) || "the file did not run" }];
    }
    return failed.map(({ ancestorTitles, title, failureMessages }) => ({
      title: [file.name, ...ancestorTitles, title].join(" › "),
      message: firstLines(failureMessages.join("\n")),
    }));
  });
  return { passed: report.numPassedTests, failures };
}

function* specsOf(suite, titles = []) {
  const path = suite.title ? [...titles, suite.title] : titles;
  for (const spec of suite.specs ?? []) yield { spec, path };
  for (const inner of suite.suites ?? []) yield* specsOf(inner, path);
}

/**
 * @param {any} report Playwright's JSON
 * @returns {Tally}
 */
export function tallyPlaywright(report) {
  let passed = 0;
  const failures = (report.errors ?? []).map(({ message }) => ({
    title: "test-e2e",
    message: firstLines(message),
  }));
  for (const suite of report.suites ?? []) {
    for (const { spec, path } of specsOf(suite)) {
      for (const { status, projectName, results } of spec.tests) {
        if (status === "expected") passed += 1;
        // One that passes on a second try has failed.
        if (status !== "unexpected" && status !== "flaky") continue;
        const said = results
          .flatMap(({ error, errors }) => [error, ...(errors ?? [])])
          .find(Boolean)?.message;
        const title = [...path, spec.title].join(" › ") + (projectName ? ` (${projectName})` : "");
        failures.push({ title, message: firstLines(said) || status });
      }
    }
  }
  return { passed, failures };
}
