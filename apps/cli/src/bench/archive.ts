import { createWriteStream } from "node:fs";
import { mkdtemp, open, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openThrowawayDatabase, type ThrowawayDatabase } from "@trunnion/db/admin";
import { seedDemo } from "@trunnion/prisma/seed";
import { archiveKinds, kindFile } from "@trunnion/register";
import {
  Database,
  type EvidenceFiles,
  openOperator,
  prepareArchive,
  rebuildClub,
  restoreRecords,
} from "@trunnion/service";
import pg from "pg";
import { generateClub } from "../generate/club";
import type { BenchRow } from "./row";

const SIZES = [10_000, 100_000] as const;
const SEED = 1971;
/** The generated cars have no photographs. */
const noFiles: EvidenceFiles = {
  has: async () => false,
  open: async () => undefined,
  keep: async () => undefined,
};

const MEGA = 1e6;

/** Seconds a work takes, of the clock and of the processor, and the memory this process held before and at most, resident, in megabytes. */
async function watched<T>(work: () => Promise<T>) {
  globalThis.gc?.();
  const before = process.memoryUsage.rss();
  let peak = before;
  const watch = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage.rss());
  }, 50);
  const begun = performance.now();
  const idle = process.cpuUsage();
  try {
    const result = await work();
    const seconds = (performance.now() - begun) / 1000;
    const { user, system } = process.cpuUsage(idle);
    return { result, seconds, cpu: (user + system) / 1e6, before: before / MEGA, peak: peak / MEGA };
  } finally {
    clearInterval(watch);
  }
}

/** Tables of the rows that an archive has; what follows from them, current values above all, is worked out anew. */
const archived = archiveKinds
  .map(({ name }) => (name === "member" ? "membership" : kindFile(name).replaceAll("-", "_")))
  .filter((table) => table !== "club");

/** The peer: the bare driver reads the same rows with a cursor, and writes them to a file, a line of JSON each. */
async function bareDriver(owner: pg.Client, clubId: string, path: string): Promise<number> {
  const file = await open(path, "w");
  let count = 0;
  await owner.query("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY");
  for (const name of archived) {
    await owner.query(
      `DECLARE bare NO SCROLL CURSOR FOR SELECT * FROM "${name}" WHERE club_id = '${clubId}'`,
    );
    for (;;) {
      const { rows } = await owner.query("FETCH 2000 FROM bare");
      if (rows.length === 0) break;
      await file.writeFile(rows.map((row) => `${JSON.stringify(row)}\n`).join(""));
      count += rows.length;
    }
    await owner.query("CLOSE bare");
  }
  await owner.query("COMMIT");
  await file.close();
  return count;
}

interface Measuring {
  readonly world: ThrowawayDatabase;
  readonly owner: pg.Client;
  readonly folder: string;
  readonly cars: number;
}

async function writeRows({ world, owner, folder, cars }: Measuring) {
  const slug = `generated-${cars}`;
  const made = await watched(() =>
    generateClub(owner, world.database, {
      from: "sandvaer",
      slug,
      name: `Generated ${cars}`,
      cars,
      seed: SEED,
    }),
  );
  const { clubId, rows: written } = made.result;
  const bare = await watched(() => bareDriver(owner, clubId, join(folder, "bare.jsonl")));
  const path = join(folder, `${slug}.zip`);
  const ours = await watched(async () => {
    const ctx = await openOperator(world.database, slug, async (opened) => opened);
    const input = { database: world.database, personalData: true, evidence: noFiles };
    const prepared = await prepareArchive(ctx, input);
    await prepared.pour(createWriteStream(path)).finally(prepared.discard);
    return prepared.manifest.members.reduce((sum, { rows = 0 }) => sum + rows, 0);
  });
  const { size } = await stat(path);
  const rebuilt = await watched(() => rebuildClub(world.database, slug));
  return { path, rows: ours.result, written, made, bare, ours, rebuilt, size };
}

async function readRows(path: string) {
  const there = await openThrowawayDatabase();
  const owner = new Database(there.ownerUrl);
  try {
    const input = { path, owner, database: there.database, evidence: noFiles, dryRun: false };
    return await watched(() => restoreRecords(input));
  } finally {
    await owner.close();
    await there.close();
  }
}

const group = "archive";

async function measure(measuring: Measuring): Promise<readonly BenchRow[]> {
  const { path, rows, written, made, bare, ours, rebuilt, size } = await writeRows(measuring);
  const read = await readRows(path);
  const cars = new Intl.NumberFormat("en-GB").format(measuring.cars);
  const per = (seconds: number) => rows / seconds;
  return [
    {
      group,
      name: `write ${cars} cars, ${rows} rows, ${(size / MEGA).toFixed(1)} MB packed`,
      value: per(ours.seconds),
      unit: "rows/s",
      peer: { name: "bare driver, cursor into a file", value: bare.result / bare.seconds },
      ratio: per(ours.seconds) / (bare.result / bare.seconds),
    },
    {
      group,
      name: `peak memory while writing ${cars} cars`,
      value: ours.peak,
      unit: "MB",
      peer: { name: "bare driver before it", value: bare.peak },
    },
    {
      group,
      name: `current values of ${cars} cars worked out again, none other than it was`,
      value: rebuilt.seconds,
      unit: "s",
      peer: { name: "processor time of this process", value: rebuilt.cpu },
    },
    {
      group,
      name: `peak memory while working ${cars} cars out`,
      value: rebuilt.peak,
      unit: "MB",
      peer: { name: "before it", value: rebuilt.before },
    },
    {
      group,
      name: `read ${cars} cars back, every line and hash proved`,
      value: per(read.seconds),
      unit: "rows/s",
      peer: {
        name: "PostgreSQL writing them and the current values itself",
        value: written / made.seconds,
      },
      ratio: per(read.seconds) / (written / made.seconds),
    },
    {
      group,
      name: `peak memory while reading ${cars} cars back`,
      value: read.peak,
      unit: "MB",
      peer: { name: "before it", value: read.before },
    },
  ];
}

/** A club's archive of 10,000 and of 100,000 generated cars, written and read back. */
export async function archiveBench(sizes: readonly number[] = SIZES): Promise<readonly BenchRow[]> {
  const world = await openThrowawayDatabase();
  const owner = new pg.Client({ connectionString: world.ownerUrl });
  const folder = await mkdtemp(join(tmpdir(), "trunnion-bench-archive-"));
  try {
    await owner.connect();
    await seedDemo({ ...world, today: new Date().toISOString().slice(0, 10), log: () => undefined });
    const rows: BenchRow[] = [];
    for (const cars of sizes) rows.push(...(await measure({ world, owner, folder, cars })));
    return rows;
  } finally {
    await owner.end();
    await world.close();
    await rm(folder, { recursive: true, force: true });
  }
}
