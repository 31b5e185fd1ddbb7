import { randomUUID } from "node:crypto";
import { Database } from "@trunnion/db";
import { openClub } from "@trunnion/db/gate";
import { fingerprintOf } from "@trunnion/fixtures";
import { describe, expect, test } from "vitest";
import { openOperator } from "../gate";
import { restoreArchive } from "./index";
import {
  changed,
  empty,
  evidence,
  good,
  kept,
  lines,
  nowhere,
  owner,
  row,
  shareArchive,
  there,
  world,
} from "./tried-archive.fixture";

shareArchive();

describe("an archive that is sound", () => {
  test("tried only, is read and proved whole, and nothing is kept", async () => {
    const input = { path: good, owner, database: there.database, evidence, dryRun: true };
    kept.length = 0;
    expect(await restoreArchive(input)).toMatchObject({
      dryRun: true,
      rows: { car: 2, journalEntry: 2 },
      evidenceFiles: 1,
    });
    expect(kept).toEqual([]);
    expect(await fingerprintOf(there.ownerUrl)).toEqual(empty);
  });

  test.each(["", "UP", "a b", "-a", "x".repeat(61)])(
    'is not read in under the short name "%s"',
    async (as) => {
      const input = { path: good, owner, database: there.database, evidence, dryRun: false, as };
      await expect(restoreArchive(input)).rejects.toMatchObject({ code: "ARCHIVE_SLUG" });
    },
  );

  test("is not read into a database that has the club, or another of that short name", async () => {
    const before = await world.fingerprint();
    const mine = new Database(world.ownerUrl);
    const input = { path: good, owner: mine, database: world.database, evidence, dryRun: false };
    await expect(restoreArchive(input)).rejects.toMatchObject({
      code: "ARCHIVE_CLUB_KNOWN",
      details: { slug: "ours" },
    });
    await expect(restoreArchive({ ...input, as: "another" })).rejects.toMatchObject({
      code: "ARCHIVE_CLUB_KNOWN",
    });
    await mine.close();
    expect(await world.fingerprint()).toEqual(before);
  });

  test("cannot be forged by the service's role: an entry that brings time and hash is given its own", async () => {
    const forged = { action: "car.add", noun: "car", nounId: nowhere, at: new Date(0), hash: "f".repeat(64) };
    await openOperator(world.database, "ours", async ({ db }) => {
      await db.journalEntry.create({ data: { ...forged, sequence: 99n } });
      const [last] = await db.journalEntry.findMany({ orderBy: { sequence: "desc" }, take: 1 });
      expect(last?.sequence).toBe(3n);
      expect(last?.at.getFullYear()).toBeGreaterThan(2000);
      expect(last?.hash).not.toBe(forged.hash);
    });
  });

  test("cannot be read in by the service's own role", async () => {
    const input = { path: good, owner: there.database, database: there.database, evidence, dryRun: false };
    await expect(restoreArchive(input)).rejects.toThrow();
    expect(await fingerprintOf(there.ownerUrl)).toEqual(empty);
  });

  test("goes in whole; somebody of that address here is that member", async () => {
    const path = await changed((files) => {
      const member = {
        email: "known@example.test",
        id: randomUUID(),
        joinedAt: "2020-01-01T00:00:00.000Z",
        leftAt: null,
      };
      files.set(
        "rows/member.jsonl",
        `${JSON.stringify({ ...member, name: "Åse", personId: nowhere, roles: ["owner"] })}\n`,
      );
      lines("rows/evidence.jsonl", row({ addedById: nowhere }))(files);
    });
    const [known] = await world.asOwner(
      (db) => db.$queryRaw<{ id: string }[]>`SELECT gen_random_uuid()::text AS id`,
    );
    await openClub(owner, nowhere, (db) =>
      db.$executeRawUnsafe(
        "INSERT INTO person (id, name, email) VALUES ($1::uuid, 'Here', 'known@example.test')",
        known?.id,
      ),
    );
    const input = { path, owner, database: there.database, evidence, dryRun: false };
    expect(await restoreArchive(input)).toMatchObject({ people: { made: 0, known: 1 } });
    const found = await openOperator(there.database, "ours", async ({ db }) => ({
      member: await db.membership.findFirstOrThrow(),
      evidence: await db.evidence.findFirstOrThrow(),
    }));
    expect(found.member.personId).toBe(known?.id);
    expect(found.evidence.addedById).toBe(known?.id);
  });
});
