import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { openThrowawayDatabase } from "@trunnion/db/admin";
import { seedDemo } from "@trunnion/prisma/seed";
import {
  bookOf,
  type Database,
  importInChunks,
  importRegister,
  openOperator,
  rebuildClub,
  undoImport,
} from "@trunnion/service";
import pg from "pg";
import { from as copyFrom, to as copyTo } from "pg-copy-streams";
import { repository } from "../start/place";
import { type BenchRow, medianMs } from "./row";

const file = "sandvaer-register.csv";

const headings = [
  "Chassis",
  "Series",
  "Engine no",
  "Registration",
  "Built",
  "First registered",
  "Status",
  "Keeper",
  "Kept since",
  "as built: Body colour",
  "now: Front anti-roll bar diameter",
  "now: Front camber left",
  "now: Front camber right",
  "now: Front tyre pressure [psi]",
];

/** Rows such as a club's register has, each of another car. */
function rowsOf(count: number): readonly (readonly string[])[] {
  const bars = ["9/16 in", "5/8 in", "16 mm", "20 mm"];
  return Array.from({ length: count }, (_, n) => [
    `B-${String(n).padStart(6, "0")}`,
    `Series ${1 + (n % 4)}`,
    `KM${n}`,
    `GR ${n}`,
    `${1 + (n % 12)}/7${n % 8}`,
    `197${n % 8}`,
    n % 3 === 0 ? "in use" : "laid up",
    `Keeper ${n}`,
    String(1980 + (n % 40)),
    n % 2 === 0 ? "Fjord blue" : "Ochre",
    bars[n % bars.length] ?? "",
    `-0°${10 + (n % 40)}'`,
    `-0.${1 + (n % 8)}°`,
    String(22 + (n % 9)),
  ]);
}

const timed = async (work: () => Promise<unknown>) => {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
};

/** PostgreSQL's own way in: the very rows, as text, into a table without keys, indexes, checks and journal. */
async function copyMs(owner: pg.Client, rows: readonly (readonly string[])[]): Promise<number> {
  const columns = headings.map((_, index) => `c${index} text`).join(", ");
  await owner.query(`CREATE TABLE bench_copy (${columns})`);
  const lines = rows.map((row) => `${row.join("\t")}\n`);
  const ms = await timed(() =>
    pipeline(Readable.from(lines), owner.query(copyFrom("COPY bench_copy FROM STDIN"))),
  );
  await owner.query("DROP TABLE bench_copy");
  return ms;
}

const ofCars = "car_id IN (SELECT id FROM car WHERE chassis LIKE 'B-%')";
/** Every table that reading in writes, and which of its rows came of the generated file. */
const written: Readonly<Record<string, string>> = {
  car: "chassis LIKE 'B-%'",
  car_identity: ofCars,
  car_status_span: ofCars,
  keeper: `id IN (SELECT keeper_id FROM keepership WHERE ${ofCars})`,
  keepership: ofCars,
  as_built_value: ofCars,
  setting_sheet: ofCars,
  reading: `setting_sheet_id IN (SELECT id FROM setting_sheet WHERE ${ofCars})`,
  current_value: ofCars,
  import_step: ofCars,
  journal_entry: ofCars,
};

/** Tables that what was read in points to. */
const parents = ["marque", "series", "source", "import_run"];

const CLUB = '"club_id"';

/** A table's columns, in quotation marks. */
async function columnsOf(owner: pg.Client, table: string): Promise<readonly string[]> {
  const { rows } = await owner.query<{ name: string }>(
    "SELECT column_name AS name FROM information_schema.columns WHERE table_schema = 'public' AND table_name = $1 ORDER BY ordinal_position",
    [table],
  );
  return rows.map(({ name }) => `"${name}"`);
}

/** A club with the series and sources of another, as an empty place for the same rows. */
async function emptyTwin(owner: pg.Client, from: string): Promise<string> {
  const { rows } = await owner.query<{ id: string }>(
    `INSERT INTO club (id, slug, name, kind) SELECT gen_random_uuid(), slug || '-' || left(gen_random_uuid()::text, 8), name, kind
     FROM club WHERE id = $1 RETURNING id::text`,
    [from],
  );
  const twin = rows[0]?.id ?? "";
  for (const table of parents) {
    const columns = (await columnsOf(owner, table)).filter((name) => name !== CLUB).join(", ");
    await owner.query(
      `INSERT INTO ${table} (club_id, ${columns}) SELECT $1, ${columns} FROM ${table} WHERE club_id = $2`,
      [twin, from],
    );
  }
  return twin;
}

/**
 * All rows that reading in wrote, by COPY into the same tables for another club: the same primary and foreign keys, indexes and
 * checks, and none of the program's own triggers (the journal's chain, what is to be searched anew).
 */
async function copyWritten(
  owner: pg.Client,
  club: string,
): Promise<{ readonly rows: number; readonly ms: number }> {
  const { rows: found } = await owner.query<{ id: string }>("SELECT id::text FROM club WHERE slug = $1", [
    club,
  ]);
  const from = found[0]?.id ?? "";
  const twin = await emptyTwin(owner, from);
  let rows = 0;
  let ms = 0;
  for (const [table, where] of Object.entries(written)) {
    const columns = await columnsOf(owner, table);
    const selected = columns.map((name) => (name === CLUB ? `'${twin}'::uuid` : name)).join(", ");
    const out = owner.query(
      copyTo(`COPY (SELECT ${selected} FROM ${table} WHERE club_id = '${from}' AND ${where}) TO STDOUT`),
    );
    const chunks: Buffer[] = [];
    for await (const chunk of out) chunks.push(chunk);
    await owner.query(`ALTER TABLE ${table} DISABLE TRIGGER USER`);
    const into = owner.query(copyFrom(`COPY ${table} (${columns.join(", ")}) FROM STDIN`));
    ms += await timed(() => pipeline(Readable.from(chunks), into));
    rows += into.rowCount;
    await owner.query(`ALTER TABLE ${table} ENABLE TRIGGER USER`);
    // Told of the new club, the checks of foreign keys go by the primary key.
    await owner.query(`ANALYZE ${table}`);
  }
  return { rows, ms };
}

/** A generated file read in, read again and undone, against COPY of the same rows. */
async function generated(database: Database, owner: pg.Client, count: number): Promise<readonly BenchRow[]> {
  const rows = rowsOf(count);
  const bytes = new TextEncoder().encode([headings, ...rows].map((row) => row.join(";")).join("\n"));
  const club = "sandvaer";
  const book = await openOperator(database, club, (ctx) => bookOf(ctx));
  const readIn = () =>
    importInChunks((work) => openOperator(database, club, work), {
      file: "generated.csv",
      bytes,
      book,
      asOf: "2026-01-01",
      dryRun: false,
    });
  let run = "";
  const first = await timed(async () => {
    run = (await readIn()).run ?? "";
  });
  const all = await copyWritten(owner, club);
  const again = await timed(readIn);
  const undo = await timed(() => openOperator(database, club, (ctx) => undoImport(ctx, run)));
  const copy = await copyMs(owner, rows);
  const many = count.toLocaleString("en-GB");
  return [
    {
      group: "import",
      name: `${many} rows × ${headings.length} read in: records, journal, values, undo steps`,
      value: first,
      unit: "ms",
      peer: { name: "PostgreSQL COPY of those rows into a plain table", value: copy },
      ratio: copy / first,
    },
    {
      group: "import",
      name: `${many} rows × ${headings.length} read in: the same`,
      value: first,
      unit: "ms",
      peer: { name: `PostgreSQL COPY of all ${all.rows} rows written into the same tables`, value: all.ms },
      ratio: all.ms / first,
    },
    { group: "import", name: `${many} rows read again, nothing new`, value: again, unit: "ms" },
    { group: "import", name: `${many} cars undone as one step`, value: undo, unit: "ms" },
  ];
}

/** Reading in generated registers, and the demo's again, and working its current values out, each against PostgreSQL's own copying. */
export async function importBench(): Promise<readonly BenchRow[]> {
  const world = await openThrowawayDatabase();
  const owner = new pg.Client({ connectionString: world.ownerUrl });
  try {
    await owner.connect();
    await seedDemo({ ...world, today: new Date().toISOString().slice(0, 10), log: () => undefined });
    const bytes = await readFile(join(repository, "prisma/demo", file));
    const again = await medianMs(3, () =>
      openOperator(world.database, "sandvaer", async (ctx) =>
        importRegister(ctx, { file, bytes, book: await bookOf(ctx), asOf: ctx.today, dryRun: false }),
      ),
    );
    const rebuild = await medianMs(3, () => rebuildClub(world.database, "sandvaer"));
    const copy = await medianMs(3, () =>
      owner.query("CREATE TEMP TABLE copied AS SELECT * FROM current_value; DROP TABLE copied"),
    );
    const { rows } = await owner.query<{ count: number }>("SELECT count(*)::int AS count FROM current_value");
    const values = rows[0]?.count ?? 0;
    return [
      { group: "import", name: "412 cars read again, nothing new", value: again, unit: "ms" },
      {
        group: "import",
        name: `${values} current values worked out again, none of them other than it was`,
        value: rebuild,
        unit: "ms",
        peer: { name: "PostgreSQL copying those rows", value: copy },
        ratio: copy / rebuild,
      },
      ...(await generated(world.database, owner, 1_000)),
      ...(await generated(world.database, owner, 10_000)),
      ...(await generated(world.database, owner, 100_000)),
    ];
  } finally {
    await owner.end();
    await world.close();
  }
}
