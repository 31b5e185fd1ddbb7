import { recordStatements, type Statement } from "@trunnion/db/admin";
import { openWorld, type World } from "@trunnion/fixtures";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "./characteristic";
import { openOperator } from "./gate";
import { hotList } from "./hot-list";
import { refreshWholeSearchIndex } from "./search-index";

let world: World;
let driver: pg.Client;

/** Our club's cars, one in eight of all: whoever reads a table whole reads what is not ours. */
const OURS = 500;
const THEIRS = 4_000;
const VALUES = 6;
/** Tables that grow with the cars, as far as they are filled here: reading one from end to end is what a large club would notice. */
const big = new Set([
  ...["car", "car_status_span", "current_value", "car_text", "car_summary", "as_built_value"],
  ...["submission", "modification", "modification_change", "setting_sheet", "reading", "dated_item"],
  ...["tally", "tally_block", "car_tally"],
]);

const FILL = `
  INSERT INTO car (club_id, id, series_id, chassis, chassis_key, claim)
    SELECT $1::uuid, gen_random_uuid(), $2::uuid, 'M1-' || lpad(i::text, 5, '0'), 'M1' || lpad(i::text, 5, '0'), 1
    FROM generate_series(1000, 1000 + $3::int) i`;
const STATUS = `
  INSERT INTO car_status_span (club_id, id, car_id, status)
    SELECT club_id, gen_random_uuid(), id, 'inUse' FROM car WHERE club_id = $1::uuid`;
/** Of made parts many kinds of value, so that what is kept of each kind has its weight. */
const VALUE = `
  INSERT INTO current_value (club_id, car_id, characteristic, side, value_kind, entered, number, resolution, origin, origin_id, verdict)
    SELECT c.club_id, c.id, k.key, 'whole', 'quantity', '16 mm', 0.012 + (k.n * 7 + k.n * (hashtext(c.id::text) % 150)) / 10000.0, 0.001, 'reading', c.id, 'asSpecified'
    FROM car c, (SELECT 'part.' || n AS key, n FROM generate_series(1, ${VALUES}) n
      UNION ALL SELECT unnest(ARRAY['rear.antiRollBar.diameter', 'front.disc.face', 'front.camber', 'oil.cooler']), 0) AS k
    WHERE c.club_id = $1::uuid`;
/** Of each car what left the works, a change, a sheet with readings, and a day that falls due. */
const RECORD = [
  `INSERT INTO as_built_value (club_id, id, car_id, characteristic, side, value_kind, entered, number, resolution)
     SELECT club_id, gen_random_uuid(), id, 'rear.antiRollBar.diameter', 'whole', 'quantity', '16 mm', 0.016, 0.001 FROM car c
     WHERE club_id = $1::uuid AND NOT EXISTS (SELECT FROM as_built_value a WHERE a.car_id = c.id)`,
  `INSERT INTO submission (club_id, id, car_id, status, client_key)
     SELECT club_id, id, id, 'accepted', gen_random_uuid() FROM car c
     WHERE club_id = $1::uuid AND NOT EXISTS (SELECT FROM submission s WHERE s.car_id = c.id)`,
  `INSERT INTO modification (club_id, id, submission_id, car_id, sequence, fitted_earliest, fitted_latest)
     SELECT club_id, id, id, car_id, 1, '1998-05-01', '1998-05-01' FROM submission WHERE club_id = $1::uuid AND id = car_id`,
  `INSERT INTO modification_change (club_id, id, modification_id, characteristic, side, after_value_kind, after_entered, after_text)
     SELECT club_id, gen_random_uuid(), id, 'front.disc.face', 'whole', 'choice', 'drilled', 'drilled' FROM modification
     WHERE club_id = $1::uuid AND id = car_id`,
  `INSERT INTO setting_sheet (club_id, id, car_id, "on", sequence)
     SELECT club_id, id, id, '2020-05-01', 1 FROM car c
     WHERE club_id = $1::uuid AND NOT EXISTS (SELECT FROM setting_sheet s WHERE s.car_id = c.id)`,
  `INSERT INTO reading (club_id, id, setting_sheet_id, characteristic, side, value_kind, entered, number, resolution)
     SELECT club_id, gen_random_uuid(), id, key, 'left', 'quantity', '-0.5°', -0.0087, 0.0001
     FROM setting_sheet, unnest(ARRAY['front.camber', 'rear.camber', 'front.toe', 'rear.toe']) AS key
     WHERE club_id = $1::uuid AND id = car_id`,
  `INSERT INTO dated_item (club_id, id, car_id, kind, label, valid_to)
     SELECT club_id, gen_random_uuid(), id, 'harness', 'Harness', current_date + (row_number() OVER ())::int % 900 FROM car
     WHERE club_id = $1::uuid`,
];

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-007", modified: { "front.disc.face": "drilled" } });
  driver = new pg.Client({ connectionString: world.ownerUrl });
  await driver.connect();
  for (const [{ id, seriesId }, cars] of [
    [world.ours, OURS],
    [world.theirs, THEIRS],
  ] as const) {
    await driver.query(FILL, [id, seriesId, cars]);
    await driver.query(STATUS, [id]);
    await driver.query(VALUE, [id]);
    for (const record of RECORD) await driver.query(record, [id]);
  }
  await driver.query("ANALYZE");
  for (const club of ["ours", "theirs"]) {
    const book = await openOperator(world.database, club, bookOf);
    await refreshWholeSearchIndex((work) => openOperator(world.database, club, work), book);
  }
  await driver.query("VACUUM ANALYZE");
}, 180_000);
afterAll(async () => {
  await driver?.end();
  await world?.close();
});

interface Node {
  readonly "Node Type": string;
  readonly "Relation Name"?: string;
  readonly "Index Cond"?: string;
  readonly "Recheck Cond"?: string;
  readonly Filter?: string;
  readonly Plans?: readonly Node[];
}

const nodesOf = (node: Node): readonly Node[] => [node, ...(node.Plans ?? []).flatMap(nodesOf)];

/** How the service's role would run a statement in our club. */
async function planOf({ text, values }: Statement): Promise<readonly Node[]> {
  const asked = { text: `EXPLAIN (FORMAT JSON) ${text}`, values };
  return openOperator(world.database, "ours", async ({ db }) => {
    const [row] = await db.$queryRawUnsafe<{ "QUERY PLAN": readonly { readonly Plan: Node }[] }[]>(
      asked.text,
      ...asked.values,
    );
    const [plan] = row?.["QUERY PLAN"] ?? [];
    if (!plan) throw new Error(`no plan of ${text}`);
    return nodesOf(plan.Plan);
  });
}

describe.each(hotList)("$name", ({ ask }) => {
  test("names the club in every scan of a table that grows with the cars, and reads none of them whole", async () => {
    const { statements } = await recordStatements(() =>
      openOperator(world.database, "ours", (ctx) => ask(ctx, "M1-007")),
    );
    const read = statements.filter(({ text }) =>
      /^\s*(?:SELECT|WITH(?!.*\b(?:INSERT|DELETE)\b))/is.test(text),
    );
    expect(read.length).toBeGreaterThan(0);
    for (const statement of read) {
      for (const node of await planOf(statement)) {
        if (!big.has(node["Relation Name"] ?? "")) continue;
        const told = `${JSON.stringify({ ...node, Plans: undefined })} of ${statement.text}`;
        const bounds = [node["Index Cond"], node["Recheck Cond"], node.Filter].join(" ");
        expect(bounds, told).toContain("club_id");
        expect(node["Node Type"], told).not.toBe("Seq Scan");
        // One kind of count is found, not looked for among all the club's.
        if (node["Relation Name"] === "tally") expect(node["Index Cond"], told).toMatch(/about|\bid\b/);
      }
    }
  });
});
