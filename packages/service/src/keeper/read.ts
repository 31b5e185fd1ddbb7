import type { Context } from "../context";
import { dayOrNothing } from "../day";
import { maySeeKeepers } from "./policy";

/** A keeper of a car. Personal data. */
export interface KeeperLine {
  readonly name: string;
  readonly address: string;
  readonly email: string;
  readonly phone: string;
  readonly from: string;
  /** ISO day; missing for the present keeper. */
  readonly to?: string;
}

/** Keepers of a car, the present one first; `null` when the actor may not see them. */
export async function keepersOf(ctx: Context, carId: string): Promise<readonly KeeperLine[] | null> {
  if (!maySeeKeepers(ctx)) return null;
  const rows = await ctx.db.keepership.findMany({
    where: { carId },
    select: { fromText: true, to: true, keeper: true },
    orderBy: [{ to: { sort: "desc", nulls: "first" } }, { id: "desc" }],
  });
  return rows.map(({ fromText, to, keeper }) => {
    const until = dayOrNothing(to);
    return {
      name: keeper.erasedAt === null ? (keeper.name ?? "name not recorded") : "erased",
      address: keeper.address ?? "",
      email: keeper.email ?? "",
      phone: keeper.phone ?? "",
      from: fromText ?? "",
      ...(until === undefined ? {} : { to: until }),
    };
  });
}
