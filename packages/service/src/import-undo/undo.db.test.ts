import { openWorld, type World } from "@trunnion/fixtures";
import { Refusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { compareCurrentValues } from "../current-value";
import { openMember, openOperator } from "../gate";
import { importRegister } from "../import-run";
import { verifyJournal } from "../journal";
import { undoImport } from "./index";

let world: World;
beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

function importCsv(...lines: readonly string[]) {
  const bytes = new TextEncoder().encode(lines.join("\n"));
  return openOperator(world.database, "ours", async (ctx) =>
    importRegister(ctx, {
      file: "cars.csv",
      bytes,
      book: await bookOf(ctx),
      asOf: "2026-01-15",
      dryRun: false,
    }),
  );
}
async function runOf(report: ReturnType<typeof importCsv>): Promise<string> {
  const { run } = await report;
  if (run === null) throw new Error("nothing was written");
  return run;
}
const undo = (run: string) => openOperator(world.database, "ours", (ctx) => undoImport(ctx, run));

async function refusalOf(work: Promise<unknown>) {
  const error = await work.then(
    () => new Error("nothing was refused"),
    (reason: unknown) => reason,
  );
  if (!(error instanceof Refusal)) throw error;
  return { code: error.code as string, details: error.details as Record<string, unknown> };
}

/** Everything of the register but what a reading-in leaves of itself: run, source, journal, and the cars' version, which counts on. */
async function register() {
  const {
    import_run: _,
    import_step: __,
    journal_entry: ___,
    source: ____,
    car: _____,
    ...rest
  } = await world.fingerprint();
  const cars = await world.asOwner((db) =>
    db.car.findMany({ orderBy: { id: "asc" }, omit: { version: true } }),
  );
  return { rest, cars };
}

const headings =
  "Chassis;Engine no;Registration;Built;Status;Status since;Options;Keeper;Keeper address;Kept since;Recorded on;Changed on;Remarks;" +
  "as built: Front anti-roll bar diameter;now: Body colour;now: front camber left;now: front disc face";
const rich =
  "M1-011;KM 11;GR 1;1971;in use;1980;H;Åse Ørnhøi;Strandgata 7;2004;2018-05-21;2010;barn find;9/16 in;Fjord blue;-0°30';drilled";
const changed =
  "M1-011;KM 12;GR 2;3/72;laid up;2020;OD;Tõnu Bråtvær;Torget 2;2019;2024-01-01;2023;sold on;5/8 in;Ochre;-1°;grooved";

describe("undoing an import", () => {
  test("takes away the cars it added, with everything of theirs, and says so in the journal without personal data", async () => {
    const before = await register();
    const run = await runOf(importCsv(headings, rich, "M1-012;;;;;;;;;;;;;;;;"));
    expect(await undo(run)).toEqual({ run, file: "cars.csv", carsRemoved: 2, carsRestored: 0 });
    expect(await register()).toEqual(before);
    const kept = await world.inClub((db) => db.importRun.findFirstOrThrow({ where: { id: run } }));
    expect(kept.status).toBe("undone");
    expect(kept.undoneAt).not.toBeNull();
    const lines = await world.inClub((db) =>
      db.journalEntry.findMany({ where: { runId: run }, orderBy: { sequence: "asc" } }),
    );
    expect(lines.map(({ action }) => action)).toEqual([
      "car.add",
      "car.add",
      "import.done",
      "car.remove",
      "car.remove",
      "import.undone",
    ]);
    const all = JSON.stringify(lines, (_, value: unknown) =>
      typeof value === "bigint" ? `${value}` : value,
    );
    for (const personal of ["Åse", "Ørnhøi", "Strandgata"]) expect(all).not.toContain(personal);
  });

  test("puts back what it changed, to the letter, whatever table it stands in", async () => {
    await importCsv(headings, rich, "M1-013;;;1971;;;;;;;;;;;;;");
    const before = await register();
    const run = await runOf(importCsv(headings, changed, "M1-014;;;;;;;;;;;;;;;;"));
    expect(await register()).not.toEqual(before);
    expect(await undo(run)).toMatchObject({ carsRemoved: 1, carsRestored: 1 });
    expect(await register()).toEqual(before);
  });

  test("puts back a day that was only put right, and a keeper's particulars", async () => {
    const before = await register();
    const run = await runOf(
      importCsv(
        "Chassis;Status;Status since;Keeper;Keeper address;Kept since",
        "M1-011;in use;1981;Åse Ørnhøi;Torget 9;2005",
      ),
    );
    expect(await undo(run)).toMatchObject({ carsRestored: 1 });
    expect(await register()).toEqual(before);
  });

  test("leaves current values and the journal's chain right, and the file can be read in again", async () => {
    const [stale, breaks] = await openOperator(world.database, "ours", async (ctx) => [
      await compareCurrentValues(ctx, await bookOf(ctx)),
      await verifyJournal(ctx),
    ]);
    expect([stale, breaks]).toEqual([[], []]);
    const again = await importCsv(headings, changed);
    expect(again).toMatchObject({ carsAdded: 0, carsChanged: 1 });
    await undo(again.run ?? "");
  });

  test("makes the cars' version count on, so that a form opened in between is told", async () => {
    const version = () =>
      world.inClub(async (db) => (await db.car.findFirstOrThrow({ where: { chassisKey: "M1011" } })).version);
    const before = await version();
    const run = await runOf(importCsv(headings, changed));
    await undo(run);
    expect(await version()).toBe(before + 2);
  });
});

describe("undoing is refused, and nothing is undone by halves,", () => {
  const blocked = async (run: string) => {
    const before = await world.fingerprint();
    const { code, details } = await refusalOf(undo(run));
    expect(await world.fingerprint()).toEqual(before);
    return { code, cars: details.cars, count: details.count };
  };

  test("when somebody changed one of the cars since, which is named", async () => {
    const run = await runOf(importCsv("Chassis;Built", "M1-021;1971", "M1-022;1971"));
    await world.inClub((db) =>
      db.car.updateMany({
        where: { chassisKey: "M1022" },
        data: { remarks: "seen", version: { increment: 1 } },
      }),
    );
    expect(await blocked(run)).toEqual({
      code: "UNDO_BLOCKED",
      cars: [{ car: "M1-022", because: "changed since" }],
      count: 1,
    });
  });

  test("when a later import changed one of them; that one can be undone first", async () => {
    const first = await runOf(importCsv("Chassis;Built", "M1-023;1971"));
    const second = await runOf(importCsv("Chassis;Built", "M1-023;1972"));
    expect(await blocked(first)).toMatchObject({ cars: [{ car: "M1-023", because: "changed since" }] });
    await undo(second);
    expect(await undo(first)).toMatchObject({ carsRemoved: 1 });
  });

  test("when one of them is entered for an event, or measured since, or bears evidence", async () => {
    const run = await runOf(
      importCsv("Chassis;Built;now: front camber left", "M1-024;1971;-1°", "M1-025;1971;", "M1-026;1971;"),
    );
    const [car, other, third] = await world.inClub((db) =>
      db.car.findMany({
        where: { chassisKey: { in: ["M1024", "M1025", "M1026"] } },
        orderBy: { chassisKey: "asc" },
      }),
    );
    if (!car || !other || !third) throw new Error("not there");
    await world.inClub(async (db) => {
      await db.historyNote.create({ data: { carId: car.id, text: "seen" } });
      await db.settingSheet.create({ data: { carId: other.id, on: new Date("2026-01-16"), sequence: 1 } });
    });
    expect(await blocked(run)).toEqual({
      code: "UNDO_BLOCKED",
      cars: [
        { car: "M1-024", because: "a note of its history is recorded" },
        { car: "M1-025", because: "more was recorded on it since" },
      ],
      count: 2,
    });
  });

  test("when it was undone already, is not there, or belongs to another club", async () => {
    const run = await runOf(importCsv("Chassis", "M1-027"));
    await undo(run);
    expect(await refusalOf(undo(run))).toEqual({
      code: "IMPORT_NOT_READY",
      details: { file: "cars.csv", status: "was undone" },
    });
    for (const none of ["nonsense", "00000000-0000-7000-8000-000000000000"]) {
      expect((await refusalOf(undo(none))).code).toBe("IMPORT_NOT_FOUND");
    }
    const ours = await runOf(importCsv("Chassis", "M1-028"));
    const theirs = openOperator(world.database, "theirs", (ctx) => undoImport(ctx, ours));
    expect((await refusalOf(theirs)).code).toBe("IMPORT_NOT_FOUND");
  });

  test.each(["owner", "scrutineer"] as const)("to a member who is only %s", async (role) => {
    const run = await runOf(importCsv("Chassis", role === "owner" ? "M1-029" : "M1-030"));
    const member = await world.person({ roles: [role] });
    const attempt = openMember(world.database, member, "ours", (ctx) => undoImport(ctx, run));
    expect((await refusalOf(attempt)).code).toBe("ROLE_NEEDED");
  });
});
