import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { openThrowawayDatabase } from "@trunnion/db/admin";
import { seedDemo } from "@trunnion/prisma/seed";
import { bookOf, importRegister, openOperator, rebuildAllCurrentValues } from "@trunnion/service";
import pg from "pg";
import { repository } from "../start/place";
import { type BenchRow, medianMs } from "./row";

const file = "sandvaer-register.csv";

/** Reading the demo's register again, and working its current values out, against PostgreSQL's own copying of the rows. */
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
    const rebuild = await medianMs(3, () =>
      openOperator(world.database, "sandvaer", async (ctx) =>
        rebuildAllCurrentValues(ctx, await bookOf(ctx)),
      ),
    );
    const copy = await medianMs(3, () =>
      owner.query("CREATE TEMP TABLE copied AS SELECT * FROM current_value; DROP TABLE copied"),
    );
    const { rows } = await owner.query<{ count: number }>("SELECT count(*)::int AS count FROM current_value");
    const values = rows[0]?.count ?? 0;
    return [
      { group: "import", name: "412 cars read again, nothing new", value: again, unit: "ms" },
      {
        group: "import",
        name: `${values} current values worked out and written`,
        value: rebuild,
        unit: "ms",
        peer: { name: "PostgreSQL copying those rows", value: copy },
        ratio: copy / rebuild,
      },
    ];
  } finally {
    await owner.end();
    await world.close();
  }
}
