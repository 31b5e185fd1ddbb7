import type { AddEntryInput, Context } from "@trunnion/service";

/** The event comes up soon, whenever the demo is made. */
const DAYS_AHEAD = 10;
/** Cars entered from the register, and visitors that are not on it. */
const ENTRIES = 40;

interface DemoEvent {
  readonly slug: string;
  readonly name: string;
  readonly on: string;
  readonly venue: string;
}

function dayAhead(today: string, days: number): string {
  const day = new Date(`${today}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() + days);
  return day.toISOString().slice(0, 10);
}

export function demoEvent(club: string, today: string): DemoEvent {
  const on = dayAhead(today, DAYS_AHEAD);
  if (club === "grusvik")
    return { slug: "season-check", name: "Season check", on, venue: "Grusvik airfield" };
  return { slug: "kvitnes-track-day", name: "Kvitnes track day", on, venue: "Kvitnes ring" };
}

const drivers = [
  "Åse Hjelmvik",
  "Tõnu Ångskär",
  "Ewa Grzędowin",
  "Kåre Mørkdal",
  "Σοφία Καλβόνη",
  "Nanna Ørnhøi",
];

/** Enters cars in use that have the most recorded on them, with two visitors. */
export async function demoEntries(ctx: Context, ruleSetId: string): Promise<readonly AddEntryInput[]> {
  const classes = await ctx.db.eventClass.findMany({ where: { ruleSetId }, orderBy: { code: "asc" } });
  const cars = await ctx.db.car.findMany({
    where: { statuses: { some: { status: "inUse", to: null } } },
    select: { id: true },
    orderBy: [{ currentValues: { _count: "desc" } }, { chassisKey: "asc" }],
    take: ENTRIES,
  });
  const entered = cars.map(({ id }, index): AddEntryInput => {
    const eventClass = classes[index % classes.length];
    return {
      runningNumber: String(index + 1 + Math.floor(index / 7)),
      carId: id,
      driver: drivers[index % drivers.length] ?? "",
      group: index % 2 === 0 ? "A" : "B",
      ...(eventClass ? { eventClassId: eventClass.id } : {}),
    };
  });
  if (ctx.club.kind === "fleet") return entered;
  const visitors = ["open two-seater, home built, 1974", "small saloon, 1966"];
  return [
    ...entered,
    ...visitors.map((describedAs, index) => ({
      runningNumber: String(91 + index),
      describedAs,
      driver: "Vilém Dalsjø",
    })),
  ];
}
