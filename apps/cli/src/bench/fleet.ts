import { execFile } from "node:child_process";
import { promisify } from "node:util";
import {
  openThrowawayDatabase,
  recordStatements,
  type Statement,
  type ThrowawayDatabase,
} from "@trunnion/db/admin";
import { seedDemo } from "@trunnion/prisma/seed";
import {
  bookOf,
  type HotQuery,
  hotList,
  openOperator,
  rebuildClub,
  refreshWholeSearchIndex,
} from "@trunnion/service";
import pg from "pg";
import { generateClub } from "../generate/club";
import { env } from "../start/env";
import type { BenchRow } from "./row";

const group = "fleet";
const SEED = 7;
/** Runs of each question, and milliseconds after which no further one is begun. */
const RUNS = 40;
const LONG_ENOUGH = 20_000;

/** The size that larger ones are held against. */
const BASE = 10_000;

/** Sizes to measure at: `TRUNNION_BENCH_CARS=2000,20000`, else those of the aims. */
const sizesAsked = (given: string | undefined): readonly number[] =>
  given === undefined
    ? [100, 10_000, 100_000]
    : given
        .split(",")
        .map(Number)
        .filter((cars) => cars > 0);

/**
 * The slowest but one in twenty of some runs of each piece of work, after one to warm up. They take turns, so that what else
 * the machine does meanwhile meets all of them alike.
 */
export async function p95s(works: readonly (() => Promise<unknown>)[]): Promise<readonly number[]> {
  for (const work of works) await work();
  const times = works.map((): number[] => []);
  const until = performance.now() + LONG_ENOUGH;
  for (let run = 0; run < RUNS && (run < 3 || performance.now() < until); run += 1)
    for (const [place, work] of works.entries()) {
      const begun = performance.now();
      await work();
      times[place]?.push(performance.now() - begun);
    }
  return times.map((each) => {
    each.sort((a, b) => a - b);
    return each[Math.ceil(each.length * 0.95) - 1] ?? Number.NaN;
  });
}

interface Measuring {
  readonly world: ThrowawayDatabase;
  readonly driver: pg.Client;
  readonly slug: string;
  readonly clubId: string;
}

/** The same statements by a bare driver, in a transaction of the club as the service opens it. */
export async function bare({ driver, clubId }: Measuring, statements: readonly Statement[]): Promise<void> {
  await driver.query("BEGIN");
  await driver.query("SELECT set_config('trunnion.club', $1, true)", [clubId]);
  for (const { text, values } of statements) await driver.query(text, [...values]);
  await driver.query("COMMIT");
}

interface Asked {
  readonly ours: number;
  readonly driver: number;
}

async function measure(measuring: Measuring, { ask }: HotQuery): Promise<Asked> {
  const { world, slug } = measuring;
  const open = () => openOperator(world.database, slug, (ctx) => ask(ctx, "G-0000042"));
  // What is read once and held (a specification in force) is no part of what is asked each time.
  await open();
  const { statements } = await recordStatements(open);
  const [ours = Number.NaN, driver = Number.NaN] = await p95s([open, () => bare(measuring, statements)]);
  return { ours, driver };
}

/** A generated club of so many cars, indexed and known to the planner. */
export async function make(world: ThrowawayDatabase, owner: pg.Client, cars: number) {
  const slug = `fleet-${cars}`;
  const begun = performance.now();
  const made = await generateClub(owner, world.database, {
    from: "sandvaer",
    slug,
    name: slug,
    cars,
    seed: SEED,
  });
  const generated = performance.now();
  const book = await openOperator(world.database, slug, bookOf);
  await refreshWholeSearchIndex((work) => openOperator(world.database, slug, work), book);
  const indexed = performance.now();
  await owner.query("VACUUM ANALYZE");
  // What was written goes to the disk now, and not while it is measured.
  await owner.query("CHECKPOINT");
  await promisify(execFile)("sync");
  const seconds = { generate: (generated - begun) / 1000, index: (indexed - generated) / 1000 };
  return { slug, ...made, seconds };
}

const thousands = (cars: number) => new Intl.NumberFormat("en-GB").format(cars);

/** Hot questions on generated clubs: against the bare driver with the same statements, and against 10,000 cars. */
export async function fleetBench(): Promise<readonly BenchRow[]> {
  const sizes = sizesAsked(env.benchCars);
  const world = await openThrowawayDatabase();
  const owner = new pg.Client({ connectionString: world.ownerUrl });
  const driver = new pg.Client({ connectionString: world.serviceUrl });
  const rows: BenchRow[] = [];
  const base = new Map<string, number>();
  try {
    await owner.connect();
    await driver.connect();
    await seedDemo({ ...world, today: new Date().toISOString().slice(0, 10), log: () => undefined });
    for (const cars of sizes) {
      const {
        slug,
        clubId,
        currentValues,
        modifications,
        rows: written,
        seconds,
      } = await make(world, owner, cars);
      const size = `${thousands(cars)} cars`;
      const told = `${thousands(currentValues)} current values, ${thousands(modifications)} modifications`;
      rows.push(
        { group, name: `generate ${size}: ${told}`, value: written / seconds.generate, unit: "rows/s" },
        { group, name: `generate ${size}`, value: seconds.generate, unit: "s" },
        { group, name: `texts and summaries of ${size}`, value: seconds.index, unit: "s" },
      );
      for (const query of hotList) {
        const { ours, driver: theirs } = await measure({ world, driver, slug, clubId }, query);
        const smaller = base.get(query.name);
        const growth =
          smaller === undefined ? "" : `, ${(ours / smaller).toFixed(2)} × that at ${thousands(BASE)}`;
        rows.push({
          group,
          name: `p95 ${query.name}, ${size}${growth}`,
          value: ours,
          unit: "ms",
          peer: { name: "its own SQL by a bare driver", value: theirs },
          ratio: theirs / ours,
        });
        if (cars === BASE) base.set(query.name, ours);
        console.error(
          `  ${size}: ${query.name} ${ours.toFixed(1)} ms, driver ${theirs.toFixed(1)} ms${growth}`,
        );
      }
      const begun = performance.now();
      await rebuildClub(world.database, slug);
      rows.push({ group, name: `rebuild ${size}`, value: (performance.now() - begun) / 1000, unit: "s" });
      console.error(`  ${size}: rebuilt in ${((performance.now() - begun) / 1000).toFixed(1)} s`);
    }
    return rows;
  } finally {
    await owner.end();
    await driver.end();
    await world.close();
  }
}
