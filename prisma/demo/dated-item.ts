import type { Context } from "@trunnion/service";

/** Days from the demo's day to each car's next inspection, in order of numbers: some past, most of them ahead. */
const daysAhead = [-21, 12, 12, 40, 75, 110, 110, 150, 190, 230, 230, 275, 320, 360];

/** A fleet's yearly inspection, car by car. */
export async function addDatedItems(ctx: Context): Promise<void> {
  if (ctx.club.kind !== "fleet") return;
  const cars = await ctx.db.car.findMany({ orderBy: { chassisKey: "asc" }, select: { id: true } });
  for (const [place, { id: carId }] of cars.entries()) {
    const validTo = new Date(`${ctx.today}T00:00:00Z`);
    validTo.setUTCDate(validTo.getUTCDate() + (daysAhead[place % daysAhead.length] ?? 0));
    const validFrom = new Date(validTo);
    validFrom.setUTCFullYear(validFrom.getUTCFullYear() - 1);
    const item = { kind: "inspection", label: "Yearly inspection", trust: "stated" as const };
    await ctx.db.datedItem.create({ data: { ...item, carId, validFrom, validTo } });
  }
}
