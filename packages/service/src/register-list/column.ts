import type { Characteristic } from "@trunnion/register";
import type { Context } from "../context";

/** What some cars have of some characteristics, as entered: "-0.5° / -0.7°" where the sides differ. */
export async function valuesOf(
  ctx: Context,
  carIds: readonly string[],
  columns: readonly Characteristic[],
): Promise<ReadonlyMap<string, Readonly<Record<string, string>>>> {
  if (columns.length === 0) return new Map();
  const rows = await ctx.db.currentValue.findMany({
    where: { carId: { in: [...carIds] }, characteristic: { in: columns.map(({ key }) => key) } },
    select: { carId: true, characteristic: true, side: true, entered: true },
    orderBy: { side: "asc" },
  });
  const texts = new Map<string, Map<string, string[]>>();
  for (const { carId, characteristic, entered } of rows) {
    const ofCar = texts.get(carId) ?? new Map<string, string[]>();
    const sides = ofCar.get(characteristic) ?? [];
    if (!sides.includes(entered)) sides.push(entered);
    ofCar.set(characteristic, sides);
    texts.set(carId, ofCar);
  }
  const said = (ofCar: Map<string, string[]>) =>
    Object.fromEntries([...ofCar].map(([key, sides]) => [key, sides.join(" / ")]));
  return new Map([...texts].map(([carId, ofCar]) => [carId, said(ofCar)]));
}
