import type { EventReportModel, ReportEntry } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { drawSheets } from "../draw-sheets";
import { outside, overlaps, readBack } from "../sample/read-back";
import { fullSheet, plainSheet, sampleSheet } from "../sample/sample-sheet";
import type { PackPartName } from "./pack";

const models = [fullSheet(1), plainSheet(2), fullSheet(12)];

const entry = (number: string, changes: Partial<ReportEntry> = {}): ReportEntry => ({
  number,
  chassis: `SV1-000${number}`,
  car: "Series 2",
  driver: "Łucja Skårnes",
  group: "A",
  className: "B",
  outcome: "passed",
  decided: "",
  decisionNote: "",
  signedBy: "",
  presented: 0,
  counts: { passed: 90, advised: 0, refused: 0, differ: 0, open: 0, notApplicable: 3 },
  points: [],
  figures: [],
  ...changes,
});

const report: EventReportModel = {
  layoutVersion: 1,
  hash: "0123456789abcdef".repeat(4),
  preparedAt: "2026-09-26T18:30:00Z",
  club: "Sandvær Register",
  event: sampleSheet().event,
  totals: [],
  entries: [
    entry("1", {
      outcome: "refused",
      presented: 1,
      points: [{ kind: "refused", check: "Wheel nuts: all there.", note: "nut missing", by: "Åse Ørnhøi" }],
      counts: { passed: 80, advised: 0, refused: 1, differ: 0, open: 12, notApplicable: 3 },
    }),
    entry("2"),
  ],
  missing: ["Tõnu's phone said that it held 3 records not sent."],
  cautions: [],
};

async function drawn(parts: readonly PackPartName[], paper: "A4" | "Letter" = "A4") {
  const read = await readBack(await drawSheets(models, { paper, parts, report }));
  for (const page of read.pages) {
    expect(overlaps(page)).toEqual([]);
    expect(outside(page)).toEqual([]);
  }
  return read;
}

describe("lists of an event", () => {
  test.each(["A4", "Letter"] as const)(
    "the overview names every entry with what differs, on %s",
    async (paper) => {
      const { text, title } = await drawn(["overview"], paper);
      for (const { entry: entered, car } of models) {
        expect(text).toContain(entered.driver);
        expect(text).toContain(car.chassis);
      }
      expect(text).toContain("Front camber Outside limits; Rear anti-roll bar diameter Outside limits");
      expect(title).toBe("Lists of the event, Vårløp at Grusvik");
    },
  );

  test("a station's list has its checks once, every car, and what one car alone gets with its reason", async () => {
    const { outline, pages } = await drawn(["stations"]);
    const front = outline.find(({ title }) => title === "Front");
    const text = pages[front?.page ?? -1]?.text ?? "";
    expect(text.split("Front towing eye sound, in reach, marked").length - 1).toBe(1);
    for (const { entry: entered } of models) expect(text).toContain(entered.driver);
    expect(text.split("Look for cracks between the holes of the drilled front discs").length - 1).toBe(2);
    expect(text).toContain("drilled discs where plain ones were specified");
    expect(outline.map(({ title }) => title)).toEqual([
      "Documents",
      "Front",
      "Engine bay",
      "Driver's side",
      "Cockpit",
      "Rear",
      "Passenger's side",
      "Underneath",
      "Driver's equipment",
    ]);
  });

  test("open points tell what was refused, what nobody looked at, and what may be missing", async () => {
    const { text } = await drawn(["openPoints"]);
    expect(text).toContain("Refused Wheel nuts: all there. “nut missing”, Åse Ørnhøi");
    expect(text).toContain("Not looked at 12 of its checks");
    expect(text).toContain("held 3 records not sent");
  });

  test("results tell every car's decision", async () => {
    const { text } = await drawn(["results"]);
    expect(text).toMatch(/refused \(presented 2 times\)/);
    expect(text).toContain("passed 90 – – –");
  });

  test("stand within the event's file where they are asked for, each with a bookmark", async () => {
    const { outline } = await drawn(["overview", "sheets", "results"]);
    expect(outline.map(({ title }) => title.split(" · ")[0])).toEqual([
      "Entry overview",
      "1",
      "2",
      "12",
      "Results",
    ]);
  });

  test("of results nothing is drawn without what was found", async () => {
    await expect(drawSheets(models, { paper: "A4", parts: ["results"] })).rejects.toThrow(/give its report/);
  });

  test("add no car to a form that is filled in", async () => {
    const bytes = await drawSheets(models, { paper: "A4", kind: "tagged", parts: ["overview", "sheets"] });
    const { readSheetForm } = await import("../read/read-form");
    expect(await readSheetForm(bytes)).toMatchObject({ sheets: [{}, {}, {}] });
  });
});
