import { mayArchive } from "../archive";
import type { ClubFacts, Context } from "../context";
import { listEvents } from "../event";
import { maySeeKeepers } from "../keeper/policy";
import { standingRecord } from "../standing-record";

/** What somebody may take away from a club, and of what. */
export interface ExportPage {
  readonly club: ClubFacts;
  /** The whole club as an archive, with or without personal data. */
  readonly mayArchive: boolean;
  /** Keepers in the list of cars, names in the journal. */
  readonly maySeeKeepers: boolean;
  /** Drivers in the list of entries. */
  readonly maySeeDrivers: boolean;
  readonly cars: number;
  /** Events with entries, the latest first. */
  readonly events: readonly { readonly slug: string; readonly name: string; readonly entries: number }[];
}

/** What a page that offers files needs to know: for every member. */
export async function exportPage(ctx: Context): Promise<ExportPage> {
  const events = await listEvents(ctx);
  const drivers = ["registrar", "fleetManager", "scrutineer"] as const;
  return {
    club: ctx.club,
    mayArchive: mayArchive(ctx),
    maySeeKeepers: maySeeKeepers(ctx),
    maySeeDrivers: drivers.some((role) => ctx.actor.roles.includes(role)),
    cars: await ctx.db.car.count({ where: standingRecord }),
    events: events
      .filter(({ entryCount }) => entryCount > 0)
      .map(({ slug, name, entryCount }) => ({ slug, name, entries: entryCount })),
  };
}
