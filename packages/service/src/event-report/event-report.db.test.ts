import { openWorld, sampleChecks, type World, type WorldPerson } from "@trunnion/fixtures";
import { parse } from "csv-parse/sync";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember } from "../gate";
import { takeInspection, takeInspectionInput } from "../inspection";
import { eventReport, reportCsv } from "./index";

let world: World;
let scrutineer: WorldPerson;
const NOW = "2026-05-01T09:00:00.000Z";

beforeAll(async () => {
  world = await openWorld();
  scrutineer = await world.person({ name: "Åse Ørnhøi", roles: ["scrutineer"] });
}, 180_000);
afterAll(() => world?.close());

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", (ctx) => work({ ...ctx, now: new Date(NOW) }));

async function inspected(slug: string) {
  const car = await world.car();
  const camber = {
    ...sampleChecks[0],
    id: "camber",
    text: "Measure the camber.",
    criterion: { kind: "measured", characteristic: "front.camber", text: "inside its limits" },
  };
  const event = await world.event({
    slug,
    checks: [...sampleChecks, camber] as never,
    entries: [
      { number: "7", car, driver: "=Żaneta" },
      { number: "9", describedAs: "kit car" },
    ],
  });
  const entries = await world.inClub((db) =>
    db.entry.findMany({ where: { eventId: event.id }, orderBy: { runningOrder: "asc" } }),
  );
  const [entryId = ""] = entries.map(({ id }) => id);
  const base = { entryId, at: NOW };
  const readings = [{ characteristic: "front.camber", side: "left", entered: "-1°15'" }];
  const input = takeInspectionInput.parse({
    event: slug,
    deviceNow: NOW,
    device: { id: uuid(), made: 6, held: 3 },
    findings: [
      { ...base, key: uuid(), check: "wheel-nuts", result: "advise", note: "one loose" },
      { ...base, key: uuid(), check: "camber", result: "pass", readings },
    ],
    decisions: [{ ...base, key: uuid(), outcome: "refused", note: "come again", signedBy: "Ż." }],
  });
  await as(scrutineer, (ctx) => takeInspection(ctx, input));
}

describe("an event's report", () => {
  test("tells each car's decision, what was advised, what is open, the figures, and what a phone still held", async () => {
    await inspected("told");
    const report = await as(scrutineer, (ctx) => eventReport(ctx, "told"));
    const [first, second] = report.entries;
    expect(first).toMatchObject({
      number: "7",
      outcome: "refused",
      decided: "Åse Ørnhøi, 1 May 2026 09:00 UTC",
      decisionNote: "come again",
      signedBy: "Ż.",
      counts: { advised: 1, passed: 1 },
    });
    expect(first?.points[0]).toMatchObject({ kind: "advised", note: "one loose", by: "Åse Ørnhøi" });
    expect(first?.points.filter(({ kind }) => kind === "open").length).toBe(first?.counts.open);
    expect(first?.figures).toMatchObject([{ label: "Front camber, left", entered: "-1°15'" }]);
    expect(second).toMatchObject({ number: "9", car: "kit car", chassis: "", outcome: "not decided" });
    expect(report.missing).toEqual([
      "Åse Ørnhøi's phone, last heard of 1 May 2026 09:00 UTC, said that it held 3 records or photos not sent. They are not in here.",
    ]);
    expect(report.totals).toContainEqual({ label: "Not decided", value: "1" });
  });

  test("as a table has a line for every point and figure, and none that a spreadsheet takes for a formula", async () => {
    await inspected("table");
    const report = await as(scrutineer, (ctx) => eventReport(ctx, "table"));
    const csv = reportCsv(report);
    const rows: string[][] = parse(csv, { bom: true });
    const lines = report.entries.reduce((sum, one) => sum + 1 + one.points.length + one.figures.length, 1);
    expect(rows).toHaveLength(lines);
    const [head = [], decision = []] = rows;
    expect(decision[head.indexOf("Driver")]).toBe("'=Żaneta");
    expect(decision[head.indexOf("Result")]).toBe("refused");
    const figure = rows.find((row) => row[head.indexOf("Kind")] === "Figure");
    expect(figure?.[head.indexOf("Reading")]).toBe("'-1°15'");
  });

  test("is for those who inspect", async () => {
    await inspected("owners");
    const owner = await world.person({ roles: ["owner"] });
    await expect(as(owner, (ctx) => eventReport(ctx, "owners"))).rejects.toMatchObject({
      code: "ROLE_NEEDED",
    });
  });
});
