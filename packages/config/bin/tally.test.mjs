import { expect, test } from "vitest";
import { tallyPlaywright, tallyVitest } from "./tally.mjs";

const assertion = (status, title = status) => ({
  status,
  title,
  ancestorTitles: ["cars"],
  failureMessages: ["\u001b[31mnot 3\u001b[39m"],
});

test("failures of vitest are named with their file and titles, without colours", () => {
  const report = {
    numPassedTests: 1,
    testResults: [
      { name: "/a.test.ts", status: "failed", assertionResults: [assertion("passed"), assertion("failed")] },
    ],
  };
  expect(tallyVitest(report)).toEqual({
    passed: 1,
    failures: [{ title: "/a.test.ts › cars › failed", message: "not 3" }],
  });
});

test("a file that did not even load counts as one failure; skipped tests count as nothing", () => {
  const testResults = [
    { name: "/b.test.ts", status: "failed", message: "Cannot find module", assertionResults: [] },
    { name: "/c.test.ts", status: "passed", assertionResults: [assertion("pending")] },
  ];
  expect(tallyVitest({ numPassedTests: 0, testResults })).toEqual({
    passed: 0,
    failures: [{ title: "/b.test.ts", message: "Cannot find module" }],
  });
});

test("Playwright's expected ones pass, unexpected and flaky ones fail, errors outside tests too", () => {
  const spec = (title, status) => ({
    title,
    tests: [{ status, projectName: "wide", results: [{ error: { message: title } }] }],
  });
  const report = {
    errors: [{ message: "no web server" }],
    suites: [
      {
        title: "car.spec.ts",
        specs: [spec("a", "expected"), spec("s", "skipped")],
        suites: [{ title: "sheet", specs: [spec("b", "unexpected"), spec("c", "flaky")] }],
      },
    ],
  };
  const { passed, failures } = tallyPlaywright(report);
  expect(passed).toBe(1);
  expect(failures.map(({ title }) => title)).toEqual([
    "test-e2e",
    "car.spec.ts › sheet › b (wide)",
    "car.spec.ts › sheet › c (wide)",
  ]);
});
