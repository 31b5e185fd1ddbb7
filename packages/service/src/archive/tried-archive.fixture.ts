import { createHash, randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { Database } from "@trunnion/db";
import { openThrowawayDatabase, type ThrowawayDatabase } from "@trunnion/db/admin";
import { type Fingerprint, fingerprintOf, openWorld, type World } from "@trunnion/fixtures";
import { Refusal, sayRefusal } from "@trunnion/register";
import { afterAll, beforeAll, expect } from "vitest";
import { type FileToPack, fromText, openArchiveFile, packFiles, wholeText } from "../archive-file";
import { openOperator } from "../gate";
import { writeJournal } from "../journal";
import { type EvidenceFiles, prepareArchive, restoreArchive } from "./index";

export let world: World;
export let there: ThrowawayDatabase;
export let owner: Database;
export let folder: string;
export let good: string;
export let empty: Fingerprint;
/** Evidence that was kept, by hash. */
export const kept: string[] = [];

export const content = Buffer.from("abc");
export const sha256Of = (text: string | Buffer) => createHash("sha256").update(text).digest("hex");
export const evidence: EvidenceFiles = {
  has: async () => true,
  open: async () => Readable.from([content]),
  keep: async (_, sha256, given) => {
    for await (const _chunk of given);
    kept.push(sha256);
  },
};

/** Opens what the tests share: a club with an archive of it, and an empty database to read it into. */
export function shareArchive(): void {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "trunnion-refuse-"));
    world = await openWorld();
    await world.car({ chassis: "M1-001", options: ["H"], keeper: { name: "Tõnu Bråtvær" } });
    await world.car({ chassis: "M1-002" });
    await world.inClub((db) =>
      db.evidence.create({
        data: { sha256: sha256Of(content), mediaType: "image/jpeg", bytes: 3, fileName: "a.jpg" },
      }),
    );
    good = join(folder, "good.zip");
    await openOperator(world.database, "ours", async (ctx) => {
      for (const chassis of ["M1-001", "M1-002"]) {
        await writeJournal(ctx, [
          { action: "car.add", noun: "car", nounId: randomUUID(), after: { chassis } },
        ]);
      }
    });
    const prepared = await openOperator(world.database, "ours", (ctx) =>
      prepareArchive(ctx, { database: world.database, personalData: true, evidence }),
    );
    await prepared.pour(createWriteStream(good));
    await prepared.discard();
    there = await openThrowawayDatabase();
    owner = new Database(there.ownerUrl);
    empty = await fingerprintOf(there.ownerUrl);
  }, 240_000);
  afterAll(async () => {
    await owner?.close();
    await there?.close();
    await world?.close();
    await rm(folder, { recursive: true, force: true });
  });
}

/** Tries to read an archive back, and gives what a person is told; everything must be as it was before. */
export async function told(path: string, dryRun = false): Promise<string> {
  kept.length = 0;
  const input = { path, owner, database: there.database, evidence, dryRun };
  const error: unknown = await restoreArchive(input).then(
    () => new Error("it was read back"),
    (thrown) => thrown,
  );
  expect(await fingerprintOf(there.ownerUrl)).toEqual(empty);
  if (!(error instanceof Refusal)) throw error;
  return `${error.code}: ${sayRefusal(error).what}`;
}

export type Files = Map<string, string>;

export async function filesOf(path: string): Promise<Files> {
  const archive = await openArchiveFile(path);
  const files: Files = new Map();
  for (const name of archive.members.keys()) files.set(name, await wholeText(archive, name));
  archive.close();
  return files;
}

export async function packed(files: Iterable<FileToPack>): Promise<string> {
  const path = join(folder, `${randomUUID()}.zip`);
  await packFiles(files, createWriteStream(path));
  return path;
}

/** The good archive with something changed in it; its manifest made to fit again, or left as it was. */
export async function changed(change: (files: Files) => void, { forged = true } = {}): Promise<string> {
  const files = await filesOf(good);
  change(files);
  if (forged) {
    const manifest = JSON.parse(files.get("manifest.json") ?? "");
    for (const member of manifest.members) {
      const text = files.get(member.path);
      if (text === undefined) continue;
      member.sha256 = sha256Of(text);
      member.bytes = Buffer.byteLength(text);
      if (member.rows !== undefined) member.rows = text.split("\n").length - 1;
    }
    files.set("manifest.json", JSON.stringify(manifest));
  }
  return packed([...files].map(([name, text]) => fromText(name, text)));
}

/** Changes a file of rows line by line. */
export const lines = (path: string, change: (line: string, index: number) => string) => (files: Files) => {
  const text = files.get(path) ?? "";
  files.set(
    path,
    text
      .split("\n")
      .map((line, index) => (line === "" ? line : change(line, index)))
      .join("\n"),
  );
};

/** A row with some fields changed. */
export const row = (more: object) => (line: string) => JSON.stringify({ ...JSON.parse(line), ...more });

/** The good archive with every appearance of a name replaced by one as long. */
export async function renamed(from: string, to: string): Promise<string> {
  expect(to).toHaveLength(from.length);
  const bytes = await readFile(good, "latin1");
  const path = join(folder, `${randomUUID()}.zip`);
  await writeFile(path, bytes.replaceAll(from, to), "latin1");
  return path;
}

export const nowhere = "01900000-0000-7000-8000-00000000dead";
