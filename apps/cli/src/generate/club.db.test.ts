import { openWorld, type World } from "@trunnion/fixtures";
import {
  bookOf,
  compareCurrentValues,
  openOperator,
  rebuildAllCurrentValues,
  verifyJournal,
} from "@trunnion/service";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { generateClubs } from "../command/generate";
import { generateClub } from "./club";

let world: World;
let owner: pg.Client;

beforeAll(async () => {
  world = await openWorld();
  owner = new pg.Client({ connectionString: world.ownerUrl });
  await owner.connect();
  await world.car({
    chassis: "M1-001",
    registration: "ABC 1",
    options: ["H"],
    keeper: { name: "Tõnu Bråtvær" },
    asBuilt: { "front.antiRollBar.diameter": "9/16 in" },
    modified: { "front.disc.face": "drilled" },
    read: { "front.camber": "-0°20'" },
  });
  await world.car({ chassis: "M1-002", status: "laidUp" });
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(async () => {
  await owner?.end();
  await world?.close();
});

const make = (slug: string, seed: number) =>
  generateClub(owner, world.database, { from: "ours", slug, name: slug, cars: 40, seed, pool: 25 });

/** MD5 of every current value of a club, and of how each is judged, by the cars' numbers. */
async function hashOf(slug: string) {
  const { rows } = await owner.query<{ hash: string; count: number }>(
    `SELECT md5(string_agg(concat_ws('|', c.chassis, v.characteristic, v.side, v.entered, v.number, v.text, v.origin,
       v.origin_id, v.since, v.verdict), chr(10) ORDER BY c.chassis, v.characteristic, v.side)) AS hash, count(*)::int AS count
     FROM club k JOIN car c ON c.club_id = k.id JOIN current_value v ON v.club_id = c.club_id AND v.car_id = c.id
     WHERE k.slug = $1`,
    [slug],
  );
  return rows[0];
}

async function drawn(slug: string) {
  const { rows } = await owner.query<{ chassis: string; read: string }>(
    `SELECT c.chassis, count(r.id)::text AS read FROM club k JOIN car c ON c.club_id = k.id
     LEFT JOIN setting_sheet s ON s.club_id = c.club_id AND s.car_id = c.id
     LEFT JOIN reading r ON r.club_id = s.club_id AND r.setting_sheet_id = s.id
     WHERE k.slug = $1 GROUP BY 1 ORDER BY 1`,
    [slug],
  );
  return rows;
}

describe("a generated club", () => {
  test("has as many cars as asked, each with everything of the car it follows, and a journal that holds", async () => {
    await make("made", 1);
    const cars = await drawn("made");
    expect(cars).toHaveLength(40);
    expect(cars.every(({ read }) => Number(read) > 0)).toBe(true);
    await openOperator(world.database, "made", async (ctx) => {
      expect(await verifyJournal(ctx)).toEqual([]);
      expect(await compareCurrentValues(ctx, await bookOf(ctx))).toEqual([]);
      expect(await ctx.db.currentValue.count({ where: { verdict: "differentPart" } })).toBeGreaterThan(0);
    });
  });

  test("is as full as a well-kept register, in the cars drawn and in those that follow them", async () => {
    const { rows } = await owner.query<{ drawn: boolean; values: number; modifications: number }>(
      `SELECT c.chassis <= 'G-0000025' AS drawn, avg(v.n)::float AS values, avg(m.n)::float AS modifications
       FROM club k JOIN car c ON c.club_id = k.id
       CROSS JOIN LATERAL (SELECT count(*) AS n FROM current_value v WHERE v.club_id = c.club_id AND v.car_id = c.id) v
       CROSS JOIN LATERAL (SELECT count(*) AS n FROM modification m WHERE m.club_id = c.club_id AND m.car_id = c.id) m
       WHERE k.slug = 'made' GROUP BY 1 ORDER BY 1`,
    );
    expect(rows).toHaveLength(2);
    for (const { values, modifications } of rows) {
      expect(values).toBeGreaterThan(45);
      expect(values).toBeLessThan(85);
      expect(modifications).toBeGreaterThan(7);
      expect(modifications).toBeLessThan(14);
    }
  });

  test("numbers no two cars alike", async () => {
    const { rows } = await owner.query(
      `SELECT number FROM car_identity i JOIN club k ON k.id = i.club_id WHERE k.slug = 'made'
       GROUP BY i.kind, number HAVING count(*) > 1`,
    );
    expect(rows).toEqual([]);
  });

  test("follows from its seed", async () => {
    await make("again", 1);
    await make("other", 2);
    expect(await drawn("again")).toEqual(await drawn("made"));
    expect(await drawn("other")).not.toEqual(await drawn("made"));
    expect((await hashOf("made"))?.count).toBeGreaterThan(40);
    expect(await hashOf("again")).toEqual(await hashOf("made"));
    expect(await hashOf("other")).not.toEqual(await hashOf("made"));
  });

  test("invents its keepers", async () => {
    const { rows } = await owner.query("SELECT name FROM keeper WHERE name LIKE '%Tõnu%'");
    expect(rows).toHaveLength(1);
  });

  test("that cannot be made leaves nothing", async () => {
    const before = await world.fingerprint();
    await expect(make("made", 3)).rejects.toMatchObject({ code: "CLUB_EXISTS" });
    await expect(
      generateClub(owner, world.database, { from: "none", slug: "x", name: "x", cars: 1, seed: 1 }),
    ).rejects.toMatchObject({ code: "CLUB_NOT_FOUND" });
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("several generated clubs", () => {
  test("are called after their seeds, and none is written where one of them exists", async () => {
    const made = await generateClubs(owner, world.database, { clubs: 2, cars: 5, seed: 8 }, "ours");
    expect(made.map(({ club }) => club)).toEqual(["generated-8", "generated-9"]);
    const before = await world.fingerprint();
    await expect(
      generateClubs(owner, world.database, { clubs: 2, cars: 5, seed: 7 }, "ours"),
    ).rejects.toMatchObject({
      code: "CLUB_EXISTS",
    });
    expect(await world.fingerprint()).toEqual(before);
  });
});
