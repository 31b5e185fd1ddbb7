import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openOperator } from "../gate";
import { verifyJournal, writeJournal } from "./index";

let world: World;
const NOUN = "01900000-0000-7000-8000-000000000001";

beforeAll(async () => {
  world = await openWorld();
  for (const club of ["ours", "theirs"]) {
    for (const chassis of ["M1-001", "M1-002", "M1-003"]) {
      const line = { action: "car.add", noun: "car", nounId: NOUN, after: { chassis }, reason: "a | b" };
      await openOperator(world.database, club, (ctx) => writeJournal(ctx, [line]));
    }
  }
}, 120_000);
afterAll(() => world?.close());

const verify = (club = "ours") => openOperator(world.database, club, verifyJournal);

/** As somebody would who holds the database itself: past the triggers. */
function tamper(sql: string) {
  return world.asOwner(async (db) => {
    await db.$executeRawUnsafe("ALTER TABLE journal_entry DISABLE TRIGGER USER");
    await db.$executeRawUnsafe(sql.replaceAll(":ours", `'${world.ours.id}'`));
    await db.$executeRawUnsafe("ALTER TABLE journal_entry ENABLE TRIGGER USER");
  });
}

describe("the journal's chain", () => {
  test("holds as it was written, each club's by itself", async () => {
    expect(await verify()).toEqual([]);
    expect(await verify("theirs")).toEqual([]);
  });

  test("cannot be written to by the owner while the triggers stand", async () => {
    const change = world.asOwner((db) => db.$executeRawUnsafe("UPDATE journal_entry SET action = 'x'"));
    await expect(change).rejects.toThrow(/append-only/);
  });

  test.each([
    ["what was done", "action = 'car.change'", "action = 'car.add'"],
    ["the record after", `after = '{"chassis": "M1-009"}'`, `after = '{"chassis": "M1-002"}'`],
    ["who did it", `person_id = '${NOUN}'`, "person_id = NULL"],
    ["when", "at = at - interval '1 day'", "at = at + interval '1 day'"],
    ["why", "reason = NULL", "reason = 'a | b'"],
  ])("breaks where somebody changed %s, and holds again when it is put back", async (_, change, back) => {
    await tamper(`UPDATE journal_entry SET ${change} WHERE club_id = :ours AND sequence = 2`);
    expect(await verify()).toEqual([{ sequence: 2, problem: "hash" }]);
    expect(await verify("theirs")).toEqual([]);
    await tamper(`UPDATE journal_entry SET ${back} WHERE club_id = :ours AND sequence = 2`);
    expect(await verify()).toEqual([]);
  });

  test("breaks at the next entry where the forger worked the hash out again", async () => {
    await tamper("UPDATE journal_entry SET action = 'forged' WHERE club_id = :ours AND sequence = 2");
    await tamper(
      "UPDATE journal_entry j SET hash = journal_entry_hash(j) WHERE club_id = :ours AND sequence = 2",
    );
    expect(await verify()).toEqual([{ sequence: 3, problem: "link" }]);
  });

  test("is worked out from an entry on, which must follow the one before it", async () => {
    const from = (place: number) => openOperator(world.database, "ours", (ctx) => verifyJournal(ctx, place));
    // The forger of the test before left entry 2 with a hash of its own, which entry 3 does not know.
    expect(await from(3)).toEqual([{ sequence: 3, problem: "link" }]);
    expect(await from(4)).toEqual([]);
  });

  test("breaks where an entry was taken out", async () => {
    await tamper("DELETE FROM journal_entry WHERE club_id = :ours AND sequence = 2");
    expect(await verify()).toEqual([{ sequence: 3, problem: "link" }]);
    await tamper("DELETE FROM journal_entry WHERE club_id = :ours AND sequence = 1");
    expect(await verify()).toEqual([{ sequence: 3, problem: "link" }]);
  });
});
