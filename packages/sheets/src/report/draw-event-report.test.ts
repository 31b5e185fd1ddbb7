import type { EventReportModel, ReportEntry } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { outside, overlaps, readBack } from "../sample/read-back";
import { drawEventReport } from "./draw-event-report";

const entry: ReportEntry = {
  number: "7",
  chassis: "S2-0211",
  car: "Series 2",
  driver: "Łucja Skårnes",
  group: "A",
  className: "B Road tyres",
  outcome: "refused",
  decided: "Åse Ørnhøi, 26 Sep 2026 09:14 UTC",
  decisionNote: "come again with the nut",
  signedBy: "Ł. Skårnes",
  presented: 1,
  counts: { passed: 90, advised: 1, refused: 1, differ: 0, open: 2, notApplicable: 3 },
  points: [
    { kind: "refused", check: "Wheel nuts: all there.", note: "nut missing, left rear", by: "Åse Ørnhøi" },
    { kind: "advised", check: "Wiper clears the driver's side.", note: "streaks", by: "Åse Ørnhøi" },
    { kind: "open", check: "Boot closes and is held.", note: "", by: "" },
    { kind: "open", check: "Horn.", note: "", by: "" },
  ],
  figures: [
    {
      label: "Front camber, left",
      entered: "-1°15'",
      limits: "−1°00′ to 0°00′",
      verdict: "outside limits",
      instrument: "gravity gauge no. 2",
    },
  ],
};

const report = (changes: Partial<EventReportModel> = {}): EventReportModel => ({
  layoutVersion: 1,
  hash: "0123456789abcdef".repeat(4),
  preparedAt: "2026-09-26T18:30:00Z",
  club: "Sandvær Register",
  event: {
    name: "Kvitnes track day",
    on: "26 Sep 2026",
    venue: "Kvitnes ring",
    ruleSet: "House rules, 2026",
  },
  totals: [
    { label: "Entries", value: "1" },
    { label: "Refused", value: "1" },
  ],
  entries: [entry],
  missing: [
    "Tõnu's phone, last heard of 26 Sep 2026 09:00 UTC, said that it held 3 records or photos not sent.",
  ],
  cautions: ["The organiser's current regulations and the scrutineer decide."],
  ...changes,
});

async function drawn(model: EventReportModel, paper: "A4" | "Letter" = "A4") {
  const read = await readBack(await drawEventReport(model, { paper }));
  for (const page of read.pages) {
    expect(overlaps(page)).toEqual([]);
    expect(outside(page)).toEqual([]);
  }
  return read;
}

const squeezed = (text: string) => text.replaceAll(/\s/g, "");

describe("an event's report", () => {
  test.each(["A4", "Letter"] as const)(
    "says everything of its model on %s, to a reader that did not draw it",
    async (paper) => {
      const { text, title, language } = await drawn(report(), paper);
      for (const part of [
        "Łucja Skårnes",
        "S2-0211",
        "Refused",
        "“come again with the nut”",
        "Wheel nuts: all there.",
        "“nut missing, left rear”",
        "Advised: Wiper clears",
        "Not looked at, 2: Boot closes and is held. / Horn.",
        "Front camber, left -1°15'",
        "outside limits; gravity gauge no. 2",
        "said that it held 3 records or photos not sent",
        "scrutineer decide",
      ])
        expect(squeezed(text)).toContain(squeezed(part));
      expect(title).toBe("Scrutineering of Kvitnes track day, 26 Sep 2026");
      expect(language).toBe("en-GB");
    },
  );

  test("of 200 cars runs over pages that each say which event, and tells every car", async () => {
    const entries = Array.from({ length: 200 }, (_, at) => ({ ...entry, number: String(at + 1) }));
    const { pages, text } = await drawn(report({ entries }));
    expect(pages.length).toBeGreaterThan(10);
    for (const [at, page] of pages.entries()) {
      expect(page.text).toContain("Kvitnes track day");
      expect(page.text).toContain(`page ${at + 1} of ${pages.length}`);
    }
    expect(text.match(/come again with the nut/g)).toHaveLength(200);
  });

  test("of a note of 2,000 characters and a name without shapes stays on its page and says what was lost", async () => {
    const points = [{ kind: "advised", check: "Seat.", note: "long ".repeat(400).trim(), by: "" }] as const;
    const { text } = await drawn(report({ entries: [{ ...entry, points, driver: "مرحبا 🚗" }] }));
    expect(text).toMatch(/characters of this sheet have no shape/);
    expect(text.match(/long/g)).toHaveLength(400);
  });

  test("is the same bytes for the same model", async () => {
    const [one, other] = [
      await drawEventReport(report(), { paper: "A4" }),
      await drawEventReport(report(), { paper: "A4" }),
    ];
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
  });

  test.each([
    [{ layoutVersion: 2 }, /layout 2 is not known/],
    [{ preparedAt: "yesterday" }, /must be an ISO instant/],
  ])("refuses %j", async (changes, message) => {
    await expect(drawEventReport(report(changes), { paper: "A4" })).rejects.toThrow(message);
  });
});
