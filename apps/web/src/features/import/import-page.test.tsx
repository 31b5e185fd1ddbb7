import type { ImportView } from "@trunnion/api";
import { describe, expect, test, vi } from "vitest";
import { attribute, markup, readText, tags } from "../../test/markup";

// Server actions reach for the service; what they do is tested there and end to end.
vi.mock("./action", () => ({
  settleColumns: () => undefined,
  chooseSheet: () => undefined,
  doImport: () => undefined,
}));

const { ImportPage } = await import("./import-page");

const club = { slug: "sandvaer", name: "Sandvær Register" };
const proposal = {
  index: 1,
  heading: "Front bar",
  as: "now: Front anti-roll bar diameter",
  certainty: "likely",
  reason: 'the heading names "Front anti-roll bar diameter"',
  units: ["mm", "in"],
  bare: "16",
  examples: ["16", "9/16 in"],
} as const;
const view: ImportView = {
  id: "0199",
  file: "our list.xlsx",
  status: "planned",
  stage: "mapping",
  silent: false,
  rowsRead: 1_200,
  rowsDone: 0,
  carsAdded: 0,
  carsChanged: 0,
  rowsRefused: 0,
  recordedAt: new Date("2026-01-15T10:00:00Z"),
  endedAt: null,
  undoneAt: null,
  asOf: "2026-01-15",
  sheet: "Cars",
  sheets: [
    { name: "Cars", hidden: false },
    { name: "Old", hidden: true },
  ],
  head: 1,
  above: [],
  failure: null,
  earlier: null,
  proposals: [
    {
      index: 0,
      heading: "VIN",
      as: "Chassis",
      certainty: "likely",
      reason: '"VIN" is another word for "Chassis"',
      units: [],
      examples: ["S1-0001"],
    },
    proposal,
  ],
  headings: ["Chassis", "now: Front camber"],
  preview: [],
  unknownHeadings: [],
  refusedRows: [],
  doubtGroups: [],
  doubts: 0,
};
const looked: ImportView = {
  ...view,
  stage: "looked",
  rowsDone: 1_200,
  carsAdded: 1,
  carsChanged: 1,
  rowsRefused: 1,
  proposals: [],
  preview: [
    {
      line: 2,
      car: "S1-0001",
      added: false,
      lines: [{ what: "Built", before: "1968", after: "3/68" }],
    },
    { line: 3, car: "S9-1", added: true, lines: [{ what: "Engine number", before: "", after: "KM 1" }] },
  ],
  refusedRows: [{ line: 4, column: 'B "Front bar"', found: "fat", expected: "16 mm or 5/8 in" }],
  doubtGroups: [
    {
      rows: 9,
      first: [
        { line: 3, column: 'A "Chassis"', found: "S9-1", text: "chassis S9-1 fits no series of this club" },
      ],
    },
  ],
  doubts: 1,
};
const page = (given: ImportView) => <ImportPage club={club} view={given} />;
const buttons = (given: ImportView) =>
  [...markup(page(given)).matchAll(/<button[^>]*>([^<]*)</g)].map(([, text]) => text);

describe("an import's page", () => {
  test("asks what each column is, with why it is proposed, and the unit of bare numbers without choosing one", () => {
    const html = markup(page(view));
    const inputs = tags(html, "input");
    expect(inputs.map((tag) => attribute(tag, "name"))).toContain("columns.1.as");
    expect(html).toMatch(/<option value="" selected="">choose…<\/option>/);
    expect(readText(page(view))).toContain("Numbers such as 16 stand here without a unit.");
    expect(readText(page(view))).toContain(
      'Likely: "VIN" is another word for "Chassis".'.replaceAll('"', "&quot;"),
    );
    expect(html).toContain('value="Old"');
    expect(buttons(view)).toEqual(["Take this sheet and line", "Look through the file", "Forget this file"]);
  });

  test("shows what would change before and after, and what is left out, before anything is written", () => {
    const text = readText(page(looked));
    expect(text).toContain("1 car would be added, 1 changed, 1 row left out");
    expect(text).toContain("Built 1968 3/68");
    expect(text).toContain("fat 16 mm or 5/8 in");
    expect(text).toContain("S9-1 chassis S9-1 fits no series of this club");
    expect(text).toContain("and 8 more of this kind, in the file to download");
    expect(markup(page(looked))).toContain('href="/api/club/sandvaer/import/0199/problems.csv"');
    expect(buttons(looked)).toEqual(["Read in 2 cars", "Look through it again", "Forget this file"]);
  });

  test("looks again by itself while it is under way, without a script, and says how far it is", () => {
    const running = { ...looked, status: "running", preview: [], rowsDone: 500 } as const;
    expect(markup(page(running))).toContain('<meta http-equiv="refresh" content="2"/>');
    expect(readText(page(running))).toContain("500 of 1,200 rows");
    expect(readText(page(running))).toContain("1 car added, 1 changed, 1 row left out so far");
    expect(buttons(running)).toEqual([]);
    // It may only have been slow: looked at again, less often.
    expect(markup(page({ ...running, status: "interrupted" }))).toContain('content="15"');
    expect(markup(page({ ...running, status: "done" }))).not.toContain("refresh");
  });

  test("offers nothing to follow while it looks again by itself: following it would call that off", () => {
    const looking = { ...looked, stage: "looking" } as const;
    expect(markup(page(looking))).toContain('<meta http-equiv="refresh" content="2"/>');
    expect(markup(page(looking))).not.toContain("problems.csv");
    expect(buttons(looking)).toEqual([]);
    expect(markup(page(looked))).toContain("problems.csv");
  });

  test.each([
    ["interrupted", ["Go on where it stopped", "Undo this import"]],
    ["failed", ["Go on where it stopped", "Undo this import"]],
    ["done", ["Undo this import"]],
    ["undone", []],
  ] as const)("of one that is %s offers %j", (status, offered) => {
    expect(buttons({ ...looked, status, preview: [] })).toEqual(offered);
  });

  test("says that the very file was read in before, and what stopped it", () => {
    const again = { ...view, earlier: { id: "0198", recordedAt: new Date("2025-12-01T00:00:00Z") } };
    expect(readText(page(again))).toContain("This very file was read in on 2025-12-01");
    const failed = { ...looked, status: "failed", failure: "The file is gone." } as const;
    expect(readText(page(failed))).toContain("The file is gone. What was read in before that stands.");
  });
});
