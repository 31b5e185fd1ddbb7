import { openWorld, type World } from "@trunnion/fixtures";
import { type SheetModel, starterChecks, starterClasses } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { addEntries, addEvent } from "../event";
import { openOperator } from "../gate";
import { inspectionOf } from "../inspection";
import { printSheets, sheetFace } from "../printed-sheet";
import { addRuleSet } from "../rule-set";
import { lookAtForm, takeForm } from "./index";

let world: World;
let model: SheetModel;
const event = "track-day";
const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

beforeAll(async () => {
  world = await openWorld();
  const ruleSetId = await ours((ctx) =>
    addRuleSet(ctx, {
      slug: "rules",
      name: "Rules",
      edition: "2026",
      checks: starterChecks,
      classes: starterClasses,
    }),
  );
  const car = await world.car({
    chassis: "M1-070",
    modified: { "front.disc.face": "drilled" },
    modifiedOn: "2026-05-01",
  });
  await ours(async (ctx) => {
    for (const slug of [event, "other"]) {
      const id = await addEvent(ctx, {
        slug,
        name: `Event ${slug}`,
        on: "2026-06-01",
        venue: "Kvitnes ring",
        ruleSetId,
      });
      await addEntries(ctx, id, [{ runningNumber: "7", carId: car.id, driver: "Åse Ørnhøi" }]);
    }
  });
  const [printed] = await ours(async (ctx) => printSheets(ctx, { event, book: await bookOf(ctx) }));
  if (printed === undefined) throw new Error("no sheet was printed");
  model = printed;
}, 120_000);
afterAll(() => world?.close());

const numberOf = (id: string) =>
  String(model.stations.flatMap(({ checks }) => checks).findIndex((check) => check.id === id) + 1);

const filled = (fields: Record<string, string>, more: { record?: string; code?: string } = {}) => ({
  event,
  file: "filled.pdf",
  sheets: [{ code: model.code, record: model.recordHash, fields, ...more }],
});
const entered = {
  "check/wheel-nuts/result": "advise",
  "check/wheel-nuts/note": "one nut loose",
  decision: "pass-with-advice",
  scrutineer: "Tõnu",
};

describe("a filled-in sheet", () => {
  test("is looked at first, and takes nothing then", async () => {
    const [look] = await ours((ctx) => lookAtForm(ctx, filled(entered)));
    expect(look).toMatchObject({
      number: "7",
      changes: [],
      findings: [{ check: "wheel-nuts", result: "advise", note: "one nut loose", state: "new", was: [] }],
      decision: { outcome: "passWithAdvice", signedBy: "Tõnu", state: "new" },
    });
    expect(await world.inClub((db) => db.finding.count())).toBe(0);
  });

  test("becomes findings and a decision once, however often it is dropped", async () => {
    const once = await ours((ctx) => takeForm(ctx, filled(entered)));
    const twice = await ours((ctx) => takeForm(ctx, filled(entered)));
    expect([once.length, twice.length]).toEqual([2, 0]);
    expect(once.map(({ problem }) => problem)).toEqual(["", ""]);
    expect(await world.inClub((db) => db.finding.count())).toBe(1);
    const [look] = await ours((ctx) => lookAtForm(ctx, filled(entered)));
    expect(look?.findings[0]?.state).toBe("known");
  });

  test("that says otherwise is shown beside what was found, and takes its place when taken", async () => {
    const other = { ...entered, "check/wheel-nuts/result": "refuse" };
    const [look] = await ours((ctx) => lookAtForm(ctx, filled(other)));
    expect(look?.findings[0]).toMatchObject({
      state: "differs",
      was: [{ result: "advise", note: "one nut loose" }],
    });
    await ours((ctx) => takeForm(ctx, filled(other)));
    const findings = await ours(async (ctx) => {
      const { id } = await ctx.db.event.findFirstOrThrow({ where: { slug: event } });
      return (await inspectionOf(ctx, id)).findings;
    });
    expect(findings).toHaveLength(2);
    expect(findings[1]?.replaces).toEqual([findings[0]?.key]);
  });

  test("with a remark under a check's number is a note of that check; one without a number is of the car", async () => {
    const written = {
      "check/wheel-nuts/result": "advise",
      "remark/1/check": numberOf("wheel-nuts"),
      "remark/1/text": "one nut loose",
      "remark/2/text": "clean car",
      "remark/3/check": "999",
      "remark/3/text": "no such check",
    };
    const [look] = await ours((ctx) => lookAtForm(ctx, filled(written)));
    expect(look?.findings).toMatchObject([{ check: "wheel-nuts", note: "one nut loose" }]);
    expect(look?.unresolved).toEqual([
      { text: "Note on the car, without a decision", written: "clean car" },
      { text: "Note on the car, without a decision", written: "999: no such check" },
    ]);
    const [decided] = await ours((ctx) => lookAtForm(ctx, filled({ ...written, decision: "pass" })));
    expect(decided?.decision?.note).toBe("clean car\n999: no such check");
  });

  test("with a figure and no result is told, and made into no pass", async () => {
    const [look] = await ours((ctx) => lookAtForm(ctx, filled({ "check/wheel-nuts/note": "looked worn" })));
    expect(look?.findings).toEqual([]);
    expect(look?.unresolved).toMatchObject([{ written: "looked worn" }]);
  });

  test.each([
    ["of an edited record", filled.bind(null, entered, { record: "0".repeat(64) }), "SHEET_FILE_EDITED"],
    [
      "with a field that was not printed",
      filled.bind(null, { "check/made-up/result": "pass" }),
      "SHEET_FILE_EDITED",
    ],
    [
      "with a result that is none",
      filled.bind(null, { "check/wheel-nuts/result": "perhaps" }),
      "SHEET_FILE_EDITED",
    ],
    ["with a code nobody printed", filled.bind(null, entered, { code: "00000000" }), "SHEET_FILE_FOREIGN"],
    ["with nothing filled in", filled.bind(null, {}), "SHEET_FILE_FLAT"],
  ])("%s is refused in words", async (_, make, code) => {
    await expect(ours((ctx) => lookAtForm(ctx, make()))).rejects.toMatchObject({ code });
  });

  test("of another event is refused with the event it belongs to", async () => {
    const attempt = ours((ctx) => lookAtForm(ctx, { ...filled(entered), event: "other" }));
    await expect(attempt).rejects.toMatchObject({
      code: "SHEET_OF_OTHER_EVENT",
      details: { event: "Event track-day" },
    });
  });
});

describe("the code of a printed sheet", () => {
  test("says to anybody that the record is as printed, and tells no name", async () => {
    const typed = `${model.code.slice(0, 4).toLowerCase()} ${model.code.slice(4)}`;
    const face = await sheetFace(world.database, typed, undefined);
    expect(face).toMatchObject({ code: model.code, number: "7", standing: "asPrinted" });
    expect(JSON.stringify(face)).not.toContain("Ørnhøi");
  });

  test("says that it changed to anybody, and what to a member only", async () => {
    await world.inClub((db) =>
      db.entry.updateMany({ where: { event: { slug: event } }, data: { driver: "Tõnu" } }),
    );
    const member = await world.person({ name: "Łucja", roles: ["scrutineer"] });
    const stranger = await world.person({ roles: ["registrar"], club: world.theirs });
    expect(await sheetFace(world.database, model.code, undefined)).toMatchObject({ standing: "changed" });
    expect(await sheetFace(world.database, model.code, stranger)).not.toHaveProperty("changes");
    expect((await sheetFace(world.database, model.code, member)).changes).toEqual([
      { what: "Driver", printed: "Åse Ørnhøi", now: "Tõnu" },
    ]);
  });

  test.each(["", "1234", "ZZZZZZZZ", "'; drop--"])("that nobody printed is refused: %s", async (code) => {
    await expect(sheetFace(world.database, code, undefined)).rejects.toMatchObject({
      code: "SHEET_CODE_UNKNOWN",
    });
  });
});
