import { expect, test } from "vitest";
import { restoreLines } from "./restore";

const report = {
  club: { id: "1", slug: "ours", name: "Our Register" },
  personalData: false,
  rows: { car: 412, reading: 3_000 },
  evidenceFiles: 1,
  missingEvidence: ["a".repeat(64)],
  people: { made: 2, known: 1 },
  dryRun: true,
};

test("what was read back is told with its counts, and what is missing", () => {
  expect(restoreLines(report)).toEqual([
    'Our Register can be read back as "ours": 3,412 records, 412 cars, 1 piece of evidence, 1 file of it missing.',
    "2 members without a password, 1 with an account here already.",
    "Names and addresses of people are not in the archive.",
  ]);
  expect(restoreLines({ ...report, dryRun: false })[0]).toMatch(/^Our Register was read back as/);
});
