import { type CharacteristicBook, characteristicBook, characteristicSchema } from "@trunnion/register";
import type { Context } from "../context";
import { readStored } from "../stored-row";

/** The club's dictionary: the built-in characteristics and its own, which behave alike. */
export async function bookOf(ctx: Context): Promise<CharacteristicBook> {
  const rows = await ctx.db.characteristic.findMany({ orderBy: { key: "asc" } });
  return characteristicBook(
    rows.map(({ key, label, assembly, sided, kind, definition, help, setting, removable }) => {
      const particulars = definition as Record<string, unknown>;
      const columns = { key, label, assembly, sided, kind, help, setting, removable };
      return readStored(characteristicSchema, { ...particulars, ...columns }, `characteristic "${key}"`);
    }),
  );
}
