import { spawn } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { text } from "node:stream/consumers";
import { fileURLToPath } from "node:url";
import { openThrowawayDatabase, recordStatements, type ThrowawayDatabase } from "@trunnion/db/admin";
import { seedDemo } from "@trunnion/prisma/seed";
import { openOperator, registerList } from "@trunnion/service";
import pg from "pg";
import { z } from "zod";
import { childEnvironment, env } from "../start/env";
import { bare, make, p95s } from "./fleet";
import type { BenchRow } from "./row";

const group = "typing";
const CARS = 100_000;
const repository = fileURLToPath(new URL("../../../..", import.meta.url));
/** A registrar of the demo, made a member of the club that is typed into. */
const EMAIL = "registrar@demo.test";
const PASSWORD = "walk round the car";
/** Longest wait for the application, which may have to be built. */
const READY_MS = 15 * 60_000;
const LOOK_MS = 500;

const seen = z.object({
  keys: z.number(),
  kept: z.boolean(),
  longTasks: z.number(),
  longestTask: z.number(),
  p95: z.number(),
  worst: z.number(),
  answers: z.array(
    z.object({ duration: z.number(), decodedBodySize: z.number(), encodedBodySize: z.number() }),
  ),
});
const typed = z.object({ ours: seen, peer: seen, typed: z.array(z.string()) });
type Typed = z.infer<typeof typed>;

const run = (args: readonly string[], environment: NodeJS.ProcessEnv) =>
  spawn(process.execPath, [...args], {
    cwd: repository,
    env: environment,
    stdio: ["ignore", "pipe", "inherit"],
  });

async function originIn(folder: string): Promise<string> {
  for (const until = Date.now() + READY_MS; Date.now() < until; ) {
    const noted = await readFile(join(folder, "run.json"), "utf8").catch(() => "{}");
    const { origin } = JSON.parse(noted) as { origin?: string };
    if (origin !== undefined) return origin;
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
  }
  throw new Error(`the application did not come up in ${READY_MS / 60_000} minutes`);
}

/** Types into the register of a club as the built application serves it. */
async function typeInto(world: ThrowawayDatabase, slug: string): Promise<Typed> {
  const folder = await mkdtemp(join(tmpdir(), "trunnion-typing-"));
  const environment = childEnvironment({ DATABASE_URL: world.ownerUrl, TRUNNION_DATA: folder, PORT: "0" });
  const app = run(["apps/cli/bin/start.mjs"], environment);
  app.stdout.resume();
  try {
    const origin = await originIn(folder);
    const signedIn = { TRUNNION_ORIGIN: origin, TRUNNION_EMAIL: EMAIL, TRUNNION_PASSWORD: PASSWORD };
    const typing = run(["test-e2e/bin/typing.mjs", slug], childEnvironment(signedIn));
    return typed.parse(JSON.parse(await text(typing.stdout)));
  } finally {
    const ended = new Promise((resolve) => app.once("exit", resolve));
    app.kill("SIGTERM");
    await ended;
    await rm(folder, { recursive: true, force: true });
  }
}

const joinClub = `INSERT INTO membership (club_id, id, person_id, roles)
  SELECT $1, gen_random_uuid(), p.id, ARRAY['registrar']::"Role"[] FROM person p WHERE p.email = $2`;

const worstOf = (times: readonly number[]) =>
  [...times].sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1] ?? Number.NaN;

interface Answered {
  readonly service: number;
  readonly driver: number;
}

/** The slowest of the words typed, by the service and by its own statements through a bare driver. */
async function answered(
  world: ThrowawayDatabase,
  driver: pg.Client,
  {
    slug,
    clubId,
    words,
  }: { readonly slug: string; readonly clubId: string; readonly words: readonly string[] },
): Promise<Answered> {
  const found: Answered[] = [];
  for (const search of words) {
    const ask = () => openOperator(world.database, slug, (ctx) => registerList(ctx, { search }));
    const { statements } = await recordStatements(ask);
    const [service = Number.NaN, theirs = Number.NaN] = await p95s([
      ask,
      () => bare({ world, driver, slug, clubId }, statements),
    ]);
    found.push({ service, driver: theirs });
  }
  return found.reduce((worst, one) => (one.service > worst.service ? one : worst));
}

function rowsOf({ ours, peer }: Typed, { service, driver }: Answered, size: string): readonly BenchRow[] {
  const bareField = (value: number) => ({ name: "a bare field, same browser", value });
  const bytes = ours.answers.map(({ encodedBodySize }) => encodedBodySize);
  return [
    {
      group,
      name: `p95 key to paint, ${ours.keys} keys, ${size}${ours.kept ? "" : ", KEYS LOST"}`,
      value: ours.p95,
      unit: "ms",
      peer: bareField(peer.p95),
      ratio: peer.p95 / ours.p95,
    },
    {
      group,
      name: `worst key to paint, ${size}`,
      value: ours.worst,
      unit: "ms",
      peer: bareField(peer.worst),
      ratio: peer.worst / ours.worst,
    },
    {
      group,
      name: `tasks over 50 ms while typing, ${size}`,
      value: ours.longTasks,
      unit: "",
      peer: bareField(peer.longTasks),
    },
    { group, name: `longest task while typing, ${size}`, value: ours.longestTask, unit: "ms" },
    {
      group,
      name: `p95 answer in the browser, ${ours.answers.length} answers, ${size}`,
      value: worstOf(ours.answers.map(({ duration }) => duration)),
      unit: "ms",
    },
    { group, name: `largest answer, ${size}`, value: Math.max(0, ...bytes) / 1024, unit: "KiB" },
    {
      group,
      name: `p95 list and counts of the slowest words, ${size}`,
      value: service,
      unit: "ms",
      peer: { name: "its own SQL by a bare driver", value: driver },
      ratio: driver / service,
    },
  ];
}

/** Typing into the search of a large register in a real browser, against a bare field in the same one. */
export async function typingBench(): Promise<readonly BenchRow[]> {
  const cars = Math.max(...(env.benchCars ?? String(CARS)).split(",").map(Number));
  const world = await openThrowawayDatabase();
  const owner = new pg.Client({ connectionString: world.ownerUrl });
  const driver = new pg.Client({ connectionString: world.serviceUrl });
  try {
    await owner.connect();
    await driver.connect();
    await seedDemo({ ...world, today: new Date().toISOString().slice(0, 10), log: () => undefined });
    const { slug, clubId } = await make(world, owner, cars);
    await owner.query(joinClub, [clubId, EMAIL]);
    const seen = await typeInto(world, slug);
    const answer = await answered(world, driver, { slug, clubId, words: seen.typed });
    return rowsOf(seen, answer, `${new Intl.NumberFormat("en-GB").format(cars)} cars`);
  } finally {
    await owner.end();
    await driver.end();
    await world.close();
  }
}
