import { createWriteStream } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Database } from "@trunnion/db";
import { openThrowawayDatabase, type ThrowawayDatabase } from "@trunnion/db/admin";
import { fingerprintOf, openWorld, type World } from "@trunnion/fixtures";
import { backupKinds, Refusal, sayRefusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { evidenceFilesOf } from "../archive";
import { columnTypes, tableOf, unmatched } from "../archive-row";
import { openOperator } from "../gate";
import { createMember, createSignIn } from "../index";
import { verifyJournal } from "../journal";
import { openStore, type Store } from "../store";
import { kindOfFile, prepareBackup, restoreBackup } from "./index";

const PASSWORD = "walk round the car";

let world: World;
let there: ThrowawayDatabase;
let owner: Database;
let folder: string;
let store: Store;
let sha256: string;

const signInOf = (database: Database) =>
  createSignIn(database, { secret: "s".repeat(40), baseUrl: "http://localhost:3000" });

async function backUp(database: Database, from: Store, name: string): Promise<string> {
  const path = join(folder, name);
  const prepared = await prepareBackup({ database, evidence: evidenceFilesOf(from) });
  try {
    await prepared.pour(createWriteStream(path));
  } finally {
    await prepared.discard();
  }
  return path;
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-backup-test-"));
  world = await openWorld();
  store = await openStore({ kind: "folder", folder: join(folder, "store") });
  sha256 = await store.club(world.ours.id).put(Buffer.from("abc"));
  await world.car({ chassis: "M1-001", keeper: { name: "Tõnu Bråtvær" } });
  await world.car({ chassis: "M1-002", club: world.theirs });
  await world.inClub((db) =>
    db.evidence.create({ data: { sha256, mediaType: "image/png", bytes: 3, fileName: "a.png" } }),
  );
  await world.person({ email: "nowhere@example.test" });
  for (const club of ["ours", "theirs"]) {
    const member = {
      name: "Åse Ørnhøi",
      email: "ase@example.test",
      password: PASSWORD,
      roles: ["registrar"] as const,
    };
    await openOperator(world.database, club, (ctx) => createMember(ctx, signInOf(world.database), member));
  }
  there = await openThrowawayDatabase();
  owner = new Database(there.ownerUrl);
}, 240_000);
afterAll(async () => {
  await owner?.close();
  await there?.close();
  await world?.close();
  await rm(folder, { recursive: true, force: true });
});

describe("a backup of the installation", () => {
  test("knows every column of people and their credentials", async () => {
    const types = await world.asOwner(columnTypes);
    expect(backupKinds.flatMap((kind) => unmatched(kind, types.get(tableOf(kind))))).toEqual([]);
  });

  test("tried only, is proved whole and nothing is kept", async () => {
    const before = await fingerprintOf(there.ownerUrl);
    const path = await backUp(world.database, store, "tried.zip");
    const evidence = evidenceFilesOf(await openStore({ kind: "folder", folder: join(folder, "tried") }));
    const report = await restoreBackup({ path, owner, database: there.database, evidence, dryRun: true });
    expect(report).toMatchObject({ people: 2, credentials: 1, dryRun: true });
    expect(await fingerprintOf(there.ownerUrl)).toEqual(before);
    expect(await evidence.has(world.ours.id, sha256)).toBe(false);
  });

  test("with a changed credential is refused, and nothing is kept", async () => {
    const before = await fingerprintOf(there.ownerUrl);
    const path = await backUp(world.database, store, "whole.zip");
    const bytes = await readFile(path);
    const at = bytes.indexOf("rows/credential.jsonl") + 60;
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    const broken = join(folder, "broken.zip");
    await writeFile(broken, bytes);
    const error: unknown = await restoreBackup({
      path: broken,
      owner,
      database: there.database,
      evidence: evidenceFilesOf(store),
      dryRun: false,
    }).catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(Refusal);
    expect(sayRefusal(error as Refusal).what).toMatch(/credential|packed|invalid/);
    expect(await fingerprintOf(there.ownerUrl)).toEqual(before);
  });

  test("read into an empty database and made again is the same file; people sign in as before", async () => {
    const path = await backUp(world.database, store, "first.zip");
    expect(await kindOfFile(path)).toBe("backup");
    const restored = await openStore({ kind: "folder", folder: join(folder, "restored") });
    const evidence = evidenceFilesOf(restored);
    const report = await restoreBackup({ path, owner, database: there.database, evidence, dryRun: false });
    expect(report).toMatchObject({
      people: 2,
      credentials: 1,
      clubs: [{ evidenceFiles: 1 }, { evidenceFiles: 0 }],
    });
    const again = await backUp(there.database, restored, "again.zip");
    expect(Buffer.compare(await readFile(path), await readFile(again))).toBe(0);
    for (const slug of ["ours", "theirs"]) {
      expect(await openOperator(there.database, slug, verifyJournal)).toEqual([]);
      expect(await openOperator(there.database, slug, ({ db }) => db.car.count())).toBe(1);
    }
    const { user } = await signInOf(there.database).api.signInEmail({
      body: { email: "ase@example.test", password: PASSWORD },
    });
    expect(user.email).toBe("ase@example.test");
  }, 120_000);

  test("is not read into a database that holds anything", async () => {
    const path = await backUp(world.database, store, "late.zip");
    const before = await world.fingerprint();
    const mine = new Database(world.ownerUrl);
    const input = {
      path,
      owner: mine,
      database: world.database,
      evidence: evidenceFilesOf(store),
      dryRun: false,
    };
    await expect(restoreBackup(input)).rejects.toMatchObject({
      code: "BACKUP_NEEDS_EMPTY",
      details: { clubs: ["ours", "theirs"], people: 2 },
    });
    await mine.close();
    expect(await world.fingerprint()).toEqual(before);
  });
});
