import { openThrowawayDatabase, type ThrowawayDatabase } from "@trunnion/db/admin";
import type { Condition } from "@trunnion/register";
import { type ListStatement, openOperator, registerList, registerListStatements } from "@trunnion/service";
import pg from "pg";
import type { BenchRow } from "./row";

const RUNS = 40;
const club = "01900000-0000-7000-8000-0000000000b1";

/** Characteristics of each car: what a well-kept register holds, in numbers and codes. */
const numbers = [
  "front.antiRollBar.diameter",
  "rear.antiRollBar.diameter",
  "front.disc.diameter",
  "front.disc.thickness",
];
const codes = [
  "front.disc.face",
  "front.lowerArm.bush",
  "brakes.hose",
  "body.style",
  "rear.dropLink.joint",
  "oil.sump",
];
const texts = ["body.colour", "front.caliper.source"];

const thick: Condition = { op: "number", characteristic: "front.antiRollBar.diameter", is: "gt", si: 0.0238 };
const plain: Condition = { op: "code", characteristic: "front.disc.face", in: ["code0", "code1"] };
const conditions: readonly (readonly [string, Condition])[] = [
  ["one car in a hundred", thick],
  ["every third car", plain],
  [
    "five parts, nested",
    {
      op: "all",
      of: [
        plain,
        { op: "not", of: { op: "any", of: [thick, { op: "absent", characteristic: "oil.cooler" }] } },
        { op: "verdict", characteristic: "front.disc.diameter", in: ["asSpecified"] },
      ],
    },
  ],
  ["words in a text", { op: "textHas", characteristic: "body.colour", text: "colour 7" }],
];

/** A club of so many cars, twelve values each; made in the database, since it is not the making that is measured. */
async function fill(owner: pg.Client, cars: number): Promise<void> {
  await owner.query("TRUNCATE club, car CASCADE");
  await owner.query("INSERT INTO club (id, slug, name, kind) VALUES ($1, 'bench', 'Bench', 'ownersClub')", [
    club,
  ]);
  await owner.query(
    `INSERT INTO car (club_id, id, chassis, chassis_key) SELECT $1, gen_random_uuid(), 'B-' || lpad(i::text, 6, '0'), 'B' || lpad(i::text, 6, '0')
     FROM generate_series(1, $2::int) i`,
    [club, cars],
  );
  const columns =
    "club_id, car_id, characteristic, side, value_kind, entered, number, resolution, text, origin, origin_id, nominal_number, verdict";
  const from =
    "FROM (SELECT id, (row_number() OVER (ORDER BY chassis_key))::int AS i FROM car) c, unnest($2::text[]) WITH ORDINALITY AS k(key, n)";
  await owner.query(
    `INSERT INTO current_value (${columns}) SELECT $1, c.id, k.key, 'whole', 'quantity', 'bench', 0.014 + ((c.i * 7 + k.n) % 100) / 10000.0, 0.001, NULL, 'asBuilt', c.id, 0.016,
       (CASE WHEN (c.i + k.n) % 9 = 0 THEN 'differentPart' ELSE 'asSpecified' END)::"Verdict" ${from}`,
    [club, numbers],
  );
  await owner.query(
    `INSERT INTO current_value (${columns}) SELECT $1, c.id, k.key, 'whole', 'choice', 'bench', NULL, NULL, 'code' || ((c.i + k.n) % 6), 'reading', c.id, NULL, 'asSpecified' ${from}`,
    [club, codes],
  );
  await owner.query(
    `INSERT INTO current_value (${columns}) SELECT $1, c.id, k.key, 'whole', 'text', 'Colour ' || (c.i % 50), NULL, NULL, 'Colour ' || (c.i % 50), 'reading', c.id, NULL, 'notRecorded' ${from}`,
    [club, texts],
  );
  await owner.query("ANALYZE");
}

async function p95(work: () => Promise<unknown>): Promise<number> {
  for (let run = 0; run < 5; run++) await work();
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const begun = performance.now();
    await work();
    times.push(performance.now() - begun);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(RUNS * 0.95)] ?? Number.NaN;
}

/** The same statements by the bare driver, in a transaction of the club as the service opens it. */
async function bare(client: pg.Client, statements: readonly ListStatement[]): Promise<void> {
  await client.query("BEGIN");
  await client.query("SELECT set_config('trunnion.club', $1, true)", [club]);
  for (const { text, values } of statements) await client.query(text, [...values]);
  await client.query("SELECT * FROM characteristic ORDER BY key");
  await client.query("SELECT slug, name FROM series ORDER BY ordinal");
  await client.query("COMMIT");
}

async function measured(
  world: ThrowawayDatabase,
  client: pg.Client,
  cars: number,
): Promise<readonly BenchRow[]> {
  const rows: BenchRow[] = [];
  for (const [name, condition] of conditions) {
    const statements = await openOperator(world.database, "bench", (ctx) =>
      registerListStatements(ctx, { condition }),
    );
    const value = await p95(() =>
      openOperator(world.database, "bench", (ctx) => registerList(ctx, { condition })),
    );
    const peer = {
      name: "its SQL by the bare driver, p95",
      value: await p95(() => bare(client, statements)),
    };
    rows.push({
      group: "filter",
      name: `p95 of a list by ${name}, ${cars} cars`,
      value,
      unit: "ms",
      peer,
      ratio: peer.value / value,
    });
  }
  return rows;
}

/** The list of cars by conditions, against its own SQL sent by the bare driver, among 1,000 and among 10,000 cars. */
export async function filterBench(): Promise<readonly BenchRow[]> {
  const world = await openThrowawayDatabase();
  const owner = new pg.Client({ connectionString: world.ownerUrl });
  const client = new pg.Client({ connectionString: world.serviceUrl });
  try {
    await owner.connect();
    await client.connect();
    const rows: BenchRow[] = [];
    for (const cars of [1_000, 10_000]) {
      await fill(owner, cars);
      rows.push(...(await measured(world, client, cars)));
    }
    return rows;
  } finally {
    await owner.end();
    await client.end();
    await world.close();
  }
}
