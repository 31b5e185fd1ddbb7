import type { UndoBlock } from "@trunnion/register";
import type { Context } from "../context";
import { carReference } from "../record";

/** A step of a reading-in, as it is kept. */
export interface KeptStep {
  readonly carId: string;
  readonly table: string;
  readonly rowId: string;
  readonly before: Readonly<Record<string, unknown>> | null;
}

/** What undoing a reading-in amounts to. */
export interface Undoing {
  /** Cars that it added, by id. */
  readonly added: readonly string[];
  /** Cars that it changed, each with the version it gave them. */
  readonly changed: ReadonlyMap<string, number>;
  /** Rows that it added to cars the register had, by table. */
  readonly rows: ReadonlyMap<string, readonly string[]>;
  /** Columns that it changed, in the order it did. */
  readonly restored: readonly KeptStep[];
}

/** Tables of what a car has, and of what these have in turn, as the database names them. */
const OF_CAR = [
  "car_identity",
  "car_status_span",
  "car_option",
  "keepership",
  "as_built_value",
  "submission",
  "modification",
  "setting_sheet",
  "current_value",
];
/** Those that say when they were recorded. */
const RECORDED = OF_CAR.filter((table) => table !== "car_option" && table !== "current_value");
const OF_PARTS: Readonly<Record<string, readonly string[]>> = {
  submission: ["modification", "setting_sheet"],
  modification: ["modification_change"],
  setting_sheet: ["reading"],
};

export async function stepsOf({ db }: Context, runId: string): Promise<readonly KeptStep[]> {
  return db.$queryRaw<KeptStep[]>`
    SELECT car_id::text AS "carId", "table", row_id AS "rowId", before
    FROM import_step WHERE run_id = ${runId}::uuid ORDER BY ordinal`;
}

/** Sorts a run's steps by what is to be done with them. */
export function undoingOf(steps: readonly KeptStep[]): Undoing {
  const added = steps
    .filter(({ table, before }) => table === "car" && before === null)
    .map(({ carId }) => carId);
  const changed = new Map<string, number>();
  const rows = new Map<string, string[]>();
  const restored: KeptStep[] = [];
  for (const step of steps) {
    const { table, before, carId, rowId } = step;
    if (before !== null) {
      if (table === "car") changed.set(carId, Number(before.version) + 1);
      restored.push(step);
    } else if (table !== "car") {
      const known = rows.get(table) ?? [];
      rows.set(table, known);
      known.push(table === "carOption" ? `${carId} ${rowId}` : rowId);
    }
  }
  return { added, changed, rows, restored };
}

interface Reference {
  readonly child: string;
  readonly parent: string;
  readonly column: string;
}

/** Which columns of which tables point to rows of these tables: asked of the database, so that none added later is forgotten. */
async function referencesTo({ db }: Context, parents: readonly string[]): Promise<readonly Reference[]> {
  return db.$queryRaw<Reference[]>`
    SELECT child.relname::text AS child, parent.relname::text AS parent, a.attname::text AS column
    FROM pg_constraint c
    JOIN pg_class child ON child.oid = c.conrelid
    JOIN pg_class parent ON parent.oid = c.confrelid
    JOIN pg_attribute a ON a.attrelid = c.conrelid AND a.attnum = ANY(c.conkey) AND a.attname <> 'club_id'
    WHERE c.contype = 'f' AND parent.relname = ANY(${[...parents]}::text[])
    ORDER BY 1, 3`;
}

const names: Readonly<Record<string, string>> = {
  entry: "it is entered for an event",
  evidence_link: "evidence is linked to it",
  dated_item: "a dated item is recorded on it",
  history_note: "a note of its history is recorded",
  part_note: "a part was tried on it",
  number_decision: "a decision about its number names it",
  submission_message: "a submission about it was discussed",
  notice: "somebody was told about a submission of it",
  modification_fastener: "fasteners are recorded on a modification of it",
};
const sayTable = (table: string) =>
  names[table] ?? `something recorded since (${table.replaceAll("_", " ")}) rests on it`;

const quoted = (name: string) => `"${name.replaceAll('"', '""')}"`;

class Blocks {
  private readonly found = new Map<string, string>();

  add(carIds: readonly { readonly id: string }[], because: string): void {
    for (const { id } of carIds) if (!this.found.has(id)) this.found.set(id, because);
  }

  get size(): number {
    return this.found.size;
  }

  /** The first of them by number. */
  async named({ db }: Context, limit: number): Promise<readonly UndoBlock[]> {
    const cars = await db.car.findMany({
      where: { id: { in: [...this.found.keys()] } },
      select: { id: true, chassis: true, claim: true },
      orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
      take: limit,
    });
    return cars.map((car) => ({ car: carReference(car), because: this.found.get(car.id) ?? "" }));
  }
}

/**
 * Cars that are not as the import left them. Each change counts a car's version up; what later imports changed that were
 * undone themselves, twice each, is no change that anybody wants to keep.
 */
async function changedSince(ctx: Context, { added, changed }: Undoing, runId: string, blocks: Blocks) {
  const versions = [...added.map((id) => [id, 1] as const), ...changed];
  const rows = await ctx.db.$queryRaw<{ id: string }[]>`
    SELECT car.id::text FROM car
    JOIN unnest(${versions.map(([id]) => id)}::uuid[], ${versions.map(([, version]) => version)}::int[]) AS was(id, version)
      ON was.id = car.id
    WHERE car.version <> was.version + (
      SELECT count(*) FROM journal_entry later
      JOIN import_run run ON run.club_id = later.club_id AND run.id = later.run_id AND run.status = 'undone'
      WHERE later.club_id = car.club_id AND later.car_id = car.id AND later.action IN ('car.add', 'car.change')
        AND later.sequence > (SELECT max(own.sequence) FROM journal_entry own
                              WHERE own.club_id = car.club_id AND own.car_id = car.id AND own.run_id = ${runId}::uuid))`;
  blocks.add(rows, "changed since");
}

/** What others recorded on cars that would go: everything of the import itself bears the time of its car. */
async function recordedSince(ctx: Context, { added }: Undoing, blocks: Blocks): Promise<void> {
  for (const table of RECORDED) {
    const rows = await ctx.db.$queryRawUnsafe<{ id: string }[]>(
      `SELECT DISTINCT car.id::text FROM car JOIN ${quoted(table)} part ON part.club_id = car.club_id AND part.car_id = car.id
       WHERE car.id = ANY($1::uuid[]) AND part.recorded_at <> car.recorded_at`,
      added,
    );
    blocks.add(rows, "more was recorded on it since");
  }
}

/** Sheets and modifications that follow one that would go: their place in the car's life counts on it. */
async function followedSince(ctx: Context, { rows }: Undoing, blocks: Blocks): Promise<void> {
  for (const [model, table] of [
    ["settingSheet", "setting_sheet"],
    ["modification", "modification"],
  ] as const) {
    const ids = rows.get(model) ?? [];
    if (ids.length === 0) continue;
    const later = await ctx.db.$queryRawUnsafe<{ id: string }[]>(
      `SELECT DISTINCT later.car_id::text AS id FROM ${table} gone
       JOIN ${table} later ON later.club_id = gone.club_id AND later.car_id = gone.car_id AND later.sequence > gone.sequence
       WHERE gone.id = ANY($1::uuid[]) AND NOT later.id = ANY($1::uuid[])`,
      ids,
    );
    blocks.add(later, model === "settingSheet" ? "measured since" : "modified since");
  }
}

const snake = (name: string) => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

async function restingOn(ctx: Context, { added, rows }: Undoing, blocks: Blocks): Promise<void> {
  const own = new Set(OF_CAR);
  for (const { child, parent, column } of await referencesTo(ctx, ["car", ...OF_CAR])) {
    if (parent === "car") {
      if (own.has(child) || added.length === 0) continue;
      const found = await ctx.db.$queryRawUnsafe<{ id: string }[]>(
        `SELECT DISTINCT ${quoted(column)}::text AS id FROM ${quoted(child)} WHERE ${quoted(column)} = ANY($1::uuid[])`,
        added,
      );
      blocks.add(found, sayTable(child));
    } else if (!(OF_PARTS[parent] ?? []).includes(child)) {
      const model = [...rows.keys()].find((name) => snake(name) === parent);
      const ids = model === undefined ? [] : (rows.get(model) ?? []);
      const found = await ctx.db.$queryRawUnsafe<{ id: string }[]>(
        `SELECT DISTINCT gone.car_id::text AS id FROM ${quoted(parent)} gone
         JOIN ${quoted(child)} rests ON rests.club_id = gone.club_id AND rests.${quoted(column)} = gone.id
         WHERE gone.car_id = ANY($1::uuid[]) OR gone.id = ANY($2::uuid[])`,
        added,
        ids,
      );
      blocks.add(found, sayTable(child));
    }
  }
}

/** Blocks that are named; all are counted. */
const NAMED = 10;

/** The cars that keep a reading-in from being undone, each with why: somebody went on from what it wrote. */
export async function undoBlocks(
  ctx: Context,
  runId: string,
  undoing: Undoing,
): Promise<{ readonly count: number; readonly cars: readonly UndoBlock[] }> {
  const blocks = new Blocks();
  await changedSince(ctx, undoing, runId, blocks);
  await recordedSince(ctx, undoing, blocks);
  await followedSince(ctx, undoing, blocks);
  await restingOn(ctx, undoing, blocks);
  return { count: blocks.size, cars: blocks.size === 0 ? [] : await blocks.named(ctx, NAMED) };
}
