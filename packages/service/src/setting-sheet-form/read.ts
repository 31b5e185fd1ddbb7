import { type SheetGroup, sheetGroups } from "@trunnion/register";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type InstrumentLine, listInstruments } from "../instrument";
import { carReference } from "../record";

/** What the form of a new sheet is made of: the rows, and what may be read with. */
export interface SettingSheetForm {
  readonly club: ClubFacts;
  readonly today: string;
  readonly car: { readonly reference: string; readonly chassis: string };
  readonly groups: readonly SheetGroup[];
  /** What the record says now, by characteristic and side, as entered. */
  readonly now: Readonly<Record<string, string>>;
  readonly instruments: readonly InstrumentLine[];
}

/**
 * The rows, what the record says of each now, and the club's instruments.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function settingSheetForm(ctx: Context, reference: string): Promise<SettingSheetForm> {
  const record = await findCar(ctx, reference);
  const groups = sheetGroups(await bookOf(ctx));
  const keys = groups.flatMap(({ rows }) => rows.map(({ key }) => key));
  const values = await ctx.db.currentValue.findMany({
    where: { carId: record.id, characteristic: { in: keys } },
    select: { characteristic: true, side: true, entered: true },
  });
  return {
    club: ctx.club,
    today: ctx.today,
    car: { reference: carReference(record), chassis: record.chassis },
    groups,
    now: Object.fromEntries(
      values.map(({ characteristic, side, entered }) => [`${characteristic} ${side}`, entered]),
    ),
    instruments: await listInstruments(ctx),
  };
}
