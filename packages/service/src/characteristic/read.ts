import {
  type Characteristic,
  type CharacteristicBook,
  characteristicBook,
  characteristicSchema,
  refused,
} from "@trunnion/register";
import type { ClubFacts, Context } from "../context";
import { readStored } from "../stored-row";

async function ownOf(ctx: Context): Promise<readonly Characteristic[]> {
  const rows = await ctx.db.$queryRaw<{ key: string; whole: object }[]>`
    SELECT key, definition || jsonb_build_object('key', key, 'label', label, 'assembly', assembly, 'sided', sided, 'kind', kind,
      'help', help, 'setting', setting, 'removable', removable) AS whole
    FROM characteristic ORDER BY key`;
  return rows.map(({ key, whole }) => readStored(characteristicSchema, whole, `characteristic "${key}"`));
}

/** The club's dictionary: the built-in characteristics and its own, which behave alike. */
export async function bookOf(ctx: Context): Promise<CharacteristicBook> {
  return characteristicBook(await ownOf(ctx));
}

/** How much is recorded of a characteristic. */
export interface CharacteristicUse {
  /** Values of any kind: specified, as built, changed to, seen. */
  readonly values: number;
  /** How often each choice occurs. */
  readonly choices: Readonly<Record<string, number>>;
}

/** Counts what is recorded of some characteristics, in specifications of any version and on cars, by key. */
export async function usesOf(
  ctx: Context,
  keys: readonly string[],
): Promise<ReadonlyMap<string, CharacteristicUse>> {
  const rows = await ctx.db.$queryRaw<{ key: string; kind: string; text: string | null; count: number }[]>`
    WITH said AS (
      SELECT characteristic, nominal_value_kind AS kind, nominal_text AS text FROM specification_entry
      WHERE club_id = ${ctx.club.id}::uuid
      UNION ALL
      SELECT e.characteristic, a.value_kind, a.text FROM specification_alternative a
      JOIN specification_entry e ON e.club_id = a.club_id AND e.id = a.entry_id
      WHERE a.club_id = ${ctx.club.id}::uuid
      UNION ALL
      SELECT characteristic, value_kind, text FROM as_built_value WHERE club_id = ${ctx.club.id}::uuid
      UNION ALL
      SELECT characteristic, before_value_kind, before_text FROM modification_change
      WHERE club_id = ${ctx.club.id}::uuid AND before_value_kind IS NOT NULL
      UNION ALL
      SELECT characteristic, after_value_kind, after_text FROM modification_change
      WHERE club_id = ${ctx.club.id}::uuid
      UNION ALL
      SELECT characteristic, value_kind, text FROM reading WHERE club_id = ${ctx.club.id}::uuid)
    SELECT characteristic AS key, coalesce(kind::text, 'limits') AS kind, text, count(*)::int AS count
    FROM said WHERE characteristic = ANY(${[...keys]}) GROUP BY 1, 2, 3`;
  return new Map(
    keys.map((key) => {
      const own = rows.filter((row) => row.key === key);
      const choices = own.flatMap(({ kind, text, count }) =>
        kind === "choice" && text !== null ? [[text, count] as const] : [],
      );
      const values = own.reduce((sum, { count }) => sum + count, 0);
      return [key, { values, choices: Object.fromEntries(choices) }];
    }),
  );
}

/** One of the club's own characteristics, with how much is recorded of it. */
export interface OwnCharacteristic {
  readonly characteristic: Characteristic;
  readonly use: CharacteristicUse;
  /** Counts up with every change; guards against two editors. */
  readonly version: number;
}

/** The club's own characteristics, by key. */
export async function listOwnCharacteristics(ctx: Context): Promise<{
  readonly club: ClubFacts;
  readonly mayEdit: boolean;
  readonly own: readonly OwnCharacteristic[];
}> {
  const own = await ownOf(ctx);
  const keys = own.map(({ key }) => key);
  const uses = await usesOf(ctx, keys);
  const rows = await ctx.db.characteristic.findMany({ select: { id: true, key: true } });
  const versions = await ctx.db.journalEntry.groupBy({
    by: ["nounId"],
    where: { noun: "characteristic", nounId: { in: rows.map(({ id }) => id) } },
    _count: true,
  });
  const count = new Map(versions.map(({ nounId, _count }) => [nounId, _count]));
  const version = new Map(rows.map(({ id, key }) => [key, count.get(id) ?? 0]));
  return {
    club: ctx.club,
    mayEdit: ctx.actor.roles.some((role) => role === "registrar" || role === "fleetManager"),
    own: own.map((characteristic) => ({
      characteristic,
      use: uses.get(characteristic.key) ?? { values: 0, choices: {} },
      version: version.get(characteristic.key) ?? 0,
    })),
  };
}

/**
 * One of the club's own characteristics, by key.
 *
 * @throws Refusal CHARACTERISTIC_NOT_FOUND, also for a built-in one: those are nobody's to change
 */
export async function ownCharacteristic(ctx: Context, key: string): Promise<OwnCharacteristic> {
  const { own } = await listOwnCharacteristics(ctx);
  const found = own.find(({ characteristic }) => characteristic.key === key);
  if (!found) throw refused("CHARACTERISTIC_NOT_FOUND", { characteristic: key });
  return found;
}
