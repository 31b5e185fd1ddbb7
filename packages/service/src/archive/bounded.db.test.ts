import { createWriteStream } from "node:fs";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type ClubTables, Database, insertRows } from "@trunnion/db";
import { openThrowawayDatabase } from "@trunnion/db/admin";
import { openClub, openClubSnapshot } from "@trunnion/db/gate";
import { openWorld, type World } from "@trunnion/fixtures";
import { archiveKinds, type Kind } from "@trunnion/register";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openArchiveFile } from "../archive-file";
import { archiveLines } from "../archive-row";
import { openOperator } from "../gate";
import { type EvidenceFiles, prepareArchive, restoreArchive } from "./index";
import { archiveWithin, rowsOf } from "./read";

let world: World;
let folder: string;

const SHORT = 4_200;
const LONG = 300;
const noFiles: EvidenceFiles = {
  has: async () => false,
  open: async () => undefined,
  keep: async () => undefined,
};

function kindNamed(name: string): Kind {
  const kind = archiveKinds.find((one) => one.name === name);
  if (kind === undefined) throw new Error(`no kind ${name}`);
  return kind;
}
const notes = kindNamed("historyNote");

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-bounded-"));
  world = await openWorld();
  const { id: carId } = await world.car();
  const texts = Array.from({ length: SHORT + LONG }, (_, index) =>
    index < SHORT ? `note ${index}` : `${index} ${"ø".repeat(20_000)}`,
  );
  await world.inClub((db) =>
    insertRows(
      db,
      "historyNote",
      // In the order of their ids, as the archive has them: the long ones last.
      texts.map((text, index) => ({
        id: `${String(index).padStart(8, "0")}-0000-7000-8000-000000000000`,
        carId,
        text,
        onText: "1971",
      })),
    ),
  );
}, 120_000);
afterAll(async () => {
  await world?.close();
  await rm(folder, { recursive: true, force: true });
});

/** The tables, noting how many rows each question was answered with. */
function noting(tables: ClubTables, answers: number[]): ClubTables {
  return new Proxy(tables, {
    get(target, name) {
      const found = Reflect.get(target, name) as unknown;
      if (name !== "$queryRawUnsafe") return typeof found === "function" ? found.bind(target) : found;
      return async (sql: string, ...parameters: unknown[]) => {
        const rows = await target.$queryRawUnsafe<unknown[]>(sql, ...parameters);
        answers.push(rows.length);
        return rows;
      };
    },
  });
}

test("an archive asks the database for 2,000 rows at a time, and for the next only when these are taken", async () => {
  const answers: number[] = [];
  const lengths = await openClubSnapshot(world.database, world.ours.id, async (tables) => {
    const blocks = archiveLines(noting(tables, answers), notes, true);
    const first = await blocks.next();
    expect(answers).toEqual([2_000]);
    const rest: number[] = [];
    for await (const block of blocks) rest.push(block.length);
    return [first.done ? 0 : first.value.length, ...rest];
  });
  expect(lengths).toEqual([2_000, 2_000, 500]);
  expect(answers).toEqual(lengths);
});

async function archiveOf(database: Database, slug: string, name: string): Promise<string> {
  const path = join(folder, name);
  const prepared = await openOperator(database, slug, (ctx) =>
    prepareArchive(ctx, { database, personalData: true, evidence: noFiles }),
  );
  await prepared.pour(createWriteStream(path)).finally(prepared.discard);
  return path;
}

test("an archive is read back in batches of at most 1,000 rows and 4 MB, which together are all of it", async () => {
  const path = await archiveOf(world.database, "ours", "club.zip");
  const archive = await openArchiveFile(path);
  try {
    const batches: { rows: number; characters: number; longest: number }[] = [];
    for await (const batch of rowsOf(await archiveWithin(archive, ""), notes)) {
      const lengths = batch.map(({ text }) => text.length);
      const characters = lengths.reduce((sum, length) => sum + length, 0);
      batches.push({ rows: batch.length, characters, longest: Math.max(...lengths) });
    }
    expect(batches.reduce((sum, { rows }) => sum + rows, 0)).toBe(SHORT + LONG);
    // 4,500 rows, 6 MB of them in 300: by rows alone five batches would do.
    expect(batches.length).toBeGreaterThan(5);
    for (const { rows, characters, longest } of batches) {
      expect(rows).toBeLessThanOrEqual(1_000);
      expect(characters).toBeLessThan(4e6 + longest);
    }
  } finally {
    archive.close();
  }
});

test("many batches come back byte for byte, and the planner was told of them", async () => {
  const path = await archiveOf(world.database, "ours", "there.zip");
  const there = await openThrowawayDatabase();
  const owner = new Database(there.ownerUrl);
  try {
    await restoreArchive({ path, owner, database: there.database, evidence: noFiles, dryRun: false });
    const again = await archiveOf(there.database, "ours", "again.zip");
    expect((await readFile(again)).equals(await readFile(path))).toBe(true);
    const [told] = await openClub(owner, world.ours.id, (tables) =>
      tables.$queryRawUnsafe<{ rows: number }[]>(
        "SELECT reltuples::int AS rows FROM pg_class WHERE oid = 'history_note'::regclass",
      ),
    );
    expect(told).toEqual({ rows: SHORT + LONG });
  } finally {
    await owner.close();
    await there.close();
  }
}, 120_000);
