import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { invitationByToken, membershipsOf, openClub } from "./gate";
import { openThrowawayDatabase, type ThrowawayDatabase } from "./throwaway-database";

let world: ThrowawayDatabase;
let owner: pg.Client;
let ours = "";
let theirs = "";
let person = "";

async function insert(sql: string, values: readonly unknown[]): Promise<string> {
  const { rows } = await owner.query<{ id: string }>(`${sql} RETURNING id`, [...values]);
  return rows[0]?.id ?? "";
}

beforeAll(async () => {
  world = await openThrowawayDatabase();
  owner = new pg.Client({ connectionString: world.ownerUrl });
  await owner.connect();
  const club = "INSERT INTO club (id, slug, name, kind) VALUES (gen_random_uuid(), $1, $1, 'ownersClub')";
  ours = await insert(club, ["ours"]);
  theirs = await insert(club, ["theirs"]);
  const named = "INSERT INTO person (id, name, email) VALUES (gen_random_uuid(), 'Åse', 'ase@example.test')";
  person = await insert(named, []);
  const joined = `INSERT INTO membership (club_id, id, person_id, roles) VALUES ($1, gen_random_uuid(), $2, '{owner}')`;
  await insert(joined, [theirs, person]);
  const invited = `INSERT INTO invitation (club_id, id, email, roles, token_hash, expires_at)
    VALUES ($1, gen_random_uuid(), 'x@example.test', '{owner}', 'abc', now())`;
  await insert(invited, [theirs]);
}, 60_000);

afterAll(async () => {
  await owner?.end();
  await world?.close();
});

const marque = (slug: string) => ({ slug, name: slug });

describe("a transaction opened for one club", () => {
  test("writes into that club without naming it, and sees nothing of another", async () => {
    await openClub(world.database, theirs, (db) => db.marque.create({ data: marque("their-marque") }));
    await openClub(world.database, ours, (db) => db.marque.create({ data: marque("our-marque") }));
    const seen = await openClub(world.database, ours, (db) =>
      db.marque.findMany({ select: { slug: true, clubId: true } }),
    );
    expect(seen).toEqual([{ slug: "our-marque", clubId: ours }]);
  });

  test("lets no statement run on longer than the transaction may take", async () => {
    const limit = (timeout?: number) =>
      openClub(
        world.database,
        ours,
        (db) => db.$queryRaw<{ limit: string }[]>`SELECT current_setting('statement_timeout') AS "limit"`,
        timeout,
      );
    expect(await limit()).toEqual([{ limit: "20s" }]);
    expect(await limit(90_000)).toEqual([{ limit: "90s" }]);
  });

  test("cannot write a row of another club, even when it names that club", async () => {
    const intrude = openClub(world.database, ours, (db) =>
      db.marque.create({ data: { ...marque("intruder"), clubId: theirs } }),
    );
    await expect(intrude).rejects.toThrow(/row-level security/);
  });

  test("changes and deletes nothing of another club", async () => {
    const { count } = await openClub(world.database, ours, (db) =>
      db.marque.updateMany({ where: { clubId: theirs }, data: { name: "changed" } }),
    );
    expect(count).toBe(0);
    const gone = await openClub(world.database, ours, (db) =>
      db.marque.deleteMany({ where: { slug: "their-marque" } }),
    );
    expect(gone.count).toBe(0);
  });

  test("cannot point a row at a row of another club: the key carries the club", async () => {
    const [their] = await openClub(world.database, theirs, (db) => db.marque.findMany());
    const row = {
      slug: "s",
      name: "S",
      ordinal: 1,
      numberPrefix: "",
      numberDigits: 4,
      firstSerial: 1,
      lastSerial: 9,
    };
    const dates = { builtFrom: new Date("1970-01-01"), builtTo: new Date("1971-01-01") };
    const point = openClub(world.database, ours, (db) =>
      db.series.create({ data: { ...row, ...dates, marqueId: their?.id ?? "" } }),
    );
    await expect(point).rejects.toThrow(/foreign key/i);
  });
});

describe("the service role", () => {
  test("sees no row of any club outside a club's transaction", async () => {
    const service = new pg.Client({ connectionString: world.serviceUrl });
    await service.connect();
    const { rows } = await service.query("SELECT * FROM marque");
    await service.end();
    expect(rows).toEqual([]);
  });

  test("owns nothing and cannot pass by row-level security", async () => {
    const { rows } = await owner.query(
      `SELECT rolsuper, rolbypassrls, rolcreaterole,
              (SELECT count(*)::int FROM pg_class WHERE relowner = r.oid) AS owned
       FROM pg_roles r WHERE rolname = 'trunnion_service'`,
    );
    expect(rows).toEqual([{ rolsuper: false, rolbypassrls: false, rolcreaterole: false, owned: 0 }]);
  });
});

describe("before a club is chosen", () => {
  test("a person sees their own memberships and nobody else does", async () => {
    const mine = await membershipsOf(world.database, person);
    expect(mine.map(({ club }) => club.slug)).toEqual(["theirs"]);
    expect(await membershipsOf(world.database, ours)).toEqual([]);
  });

  test("an invitation is found by its link only", async () => {
    expect((await invitationByToken(world.database, "abc"))?.club.slug).toBe("theirs");
    expect(await invitationByToken(world.database, "abd")).toBeNull();
  });
});

describe("the schema", () => {
  test("has a comment on every table and every column", async () => {
    const { rows } = await owner.query<{ place: string }>(
      `SELECT c.relname || coalesce('.' || a.attname, '') AS place
       FROM pg_class c
       JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = 'public'
       LEFT JOIN LATERAL (
         SELECT attname, attnum FROM pg_attribute WHERE attrelid = c.oid AND attnum > 0 AND NOT attisdropped
         UNION ALL SELECT NULL, 0) a ON true
       WHERE c.relkind = 'r' AND c.relname <> '_prisma_migrations'
         AND coalesce(col_description(c.oid, a.attnum), CASE WHEN a.attnum = 0 THEN obj_description(c.oid) END, '') = ''
       ORDER BY 1`,
    );
    expect(rows.map(({ place }) => place)).toEqual([]);
  });

  test("keys every table of a club by the club first, and holds it to that club", async () => {
    const outside = ["person", "session", "credential", "verification", "club", "_prisma_migrations"];
    const { rows } = await owner.query<{ table: string; first: string; secured: boolean }>(
      `SELECT c.relname AS table, a.attname AS first, c.relrowsecurity AS secured
       FROM pg_class c
       JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = 'public'
       JOIN pg_index i ON i.indrelid = c.oid AND i.indisprimary
       JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum = i.indkey[0]
       WHERE c.relkind = 'r' AND NOT c.relname = ANY($1)`,
      [outside],
    );
    expect(rows.length).toBeGreaterThan(30);
    expect(rows.filter(({ first, secured }) => first !== "club_id" || !secured)).toEqual([]);
  });

  test("carries the club in every foreign key between tables of a club", async () => {
    const { rows } = await owner.query<{ name: string }>(
      `SELECT conname AS name FROM pg_constraint k
       JOIN pg_attribute own ON own.attrelid = k.conrelid AND own.attname = 'club_id'
       JOIN pg_attribute far ON far.attrelid = k.confrelid AND far.attname = 'club_id'
       WHERE k.contype = 'f' AND NOT (own.attnum = ANY(k.conkey) AND far.attnum = ANY(k.confkey))`,
    );
    expect(rows).toEqual([]);
  });

  test("deletes nothing along with a row of a club: history survives", async () => {
    const { rows } = await owner.query<{ name: string }>(
      `SELECT conname AS name FROM pg_constraint k
       JOIN pg_attribute own ON own.attrelid = k.conrelid AND own.attname = 'club_id'
       WHERE k.contype = 'f' AND k.confdeltype <> 'r'`,
    );
    expect(rows).toEqual([]);
  });
});

describe("the journal", () => {
  const line = (nounId: string) => ({
    action: "car.add",
    noun: "car",
    nounId,
    after: { chassis: "S2-0211" },
  });

  test("chains its entries by hash, in the order they were written", async () => {
    await openClub(world.database, ours, async (db) => {
      await db.journalEntry.createMany({ data: [line(ours), line(theirs)] });
      await db.journalEntry.create({ data: line(person) });
    });
    const rows = await openClub(world.database, ours, (db) =>
      db.journalEntry.findMany({ orderBy: { sequence: "asc" } }),
    );
    expect(rows.map(({ sequence }) => Number(sequence))).toEqual([1, 2, 3]);
    expect(rows[1]?.previousHash).toBe(rows[0]?.hash);
    expect(rows[2]?.previousHash).toBe(rows[1]?.hash);
    expect(new Set(rows.map(({ hash }) => hash)).size).toBe(3);
  });

  test("cannot be changed or taken from, not even by the owner of the tables", async () => {
    await expect(owner.query("UPDATE journal_entry SET action = 'other'")).rejects.toThrow(/append-only/);
    await expect(owner.query("DELETE FROM journal_entry")).rejects.toThrow(/append-only/);
    const change = openClub(world.database, ours, (db) => db.journalEntry.deleteMany());
    await expect(change).rejects.toThrow(/permission denied/);
  });
});
