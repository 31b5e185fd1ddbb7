import { type Assembly, deviating } from "@trunnion/register";
import { assessAll } from "../assessment";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type EventEntry, type EventPage, entriesOf, findEvent } from "../event";
import { type ClassStanding, carViewOf, classesOf, classStandings, sayOptions } from "../event-class";
import { mayInspect } from "../inspection/policy";
import { type DeviceLine, devicesOf } from "../inspection-device";
import { mayPrint } from "../printed-sheet";
import { recordsOf } from "../record";

/** An entry with what differs on its car, by assembly. */
export interface EventEntryLine extends EventEntry {
  /** Characteristics that differ from factory on the day; missing for a car that is not on the register. */
  readonly deviating?: number;
  readonly assemblies?: Readonly<Partial<Record<Assembly, number>>>;
  /** How the car stands in the class it is entered in; missing without class or car. */
  readonly standing?: ClassStanding;
  /** Codes of the classes it may enter by what is recorded; missing for a car that is not on the register. */
  readonly open?: readonly string[];
}

export interface EventView {
  readonly club: ClubFacts;
  readonly event: EventPage;
  readonly entries: readonly EventEntryLine[];
  /** Whether the reader may print its sheets. */
  readonly mayPrint: boolean;
  /** Withdrawn entries by number, with what car it was; for those who may change them. */
  readonly withdrawn: readonly { readonly number: string; readonly car: string }[];
  /** Phones that took it along, for those who inspect. */
  readonly devices: readonly DeviceLine[];
}

async function withdrawnOf({ db }: Context, eventId: string): Promise<EventView["withdrawn"]> {
  const rows = await db.entry.findMany({
    where: { eventId, withdrawnAt: { not: null } },
    select: { runningNumber: true, describedAs: true, car: { select: { chassis: true } } },
    orderBy: { runningOrder: "asc" },
  });
  return rows.map(({ runningNumber, describedAs, car }) => ({
    number: runningNumber,
    car: car?.chassis ?? describedAs ?? "",
  }));
}

/**
 * An event with its entries in running order, each with what differs on its car on the day.
 *
 * @throws Refusal EVENT_NOT_FOUND
 */
export async function eventPage(ctx: Context, slug: string): Promise<EventView> {
  const event = await findEvent(ctx, slug);
  const entries = await entriesOf(ctx, event.id);
  const book = await bookOf(ctx);
  const carIds = entries.flatMap(({ carId }) => (carId === null ? [] : [carId]));
  const assessments = await assessAll(ctx, await recordsOf(ctx, carIds), book, event.on);
  const counted = new Map(
    assessments.map(({ record, deviations }) => {
      const assemblies: Partial<Record<Assembly, number>> = {};
      const telling = deviating(deviations);
      for (const { characteristic } of telling) {
        const assembly = book.find(characteristic)?.assembly;
        if (assembly) assemblies[assembly] = (assemblies[assembly] ?? 0) + 1;
      }
      return [record.id, { deviating: telling.length, assemblies }];
    }),
  );
  const { say } = await sayOptions(ctx);
  const saying = { book, say };
  const classes = await classesOf(ctx, event.ruleSetId, saying);
  const stands = new Map(
    assessments.map((one) => [
      one.record.id,
      classStandings(classes, carViewOf(one, { eventDay: event.on, book }), saying),
    ]),
  );
  const inClass = ({ carId, classId }: EventEntry) => {
    const all = stands.get(carId ?? "");
    if (!all) return {};
    const standing = all.find(({ id }) => id === classId);
    const open = all.filter(({ truth }) => truth === "yes").map(({ code }) => code);
    return { open, ...(standing === undefined ? {} : { standing }) };
  };
  return {
    club: ctx.club,
    event,
    entries: entries.map((entry) => ({
      ...entry,
      ...counted.get(entry.carId ?? ""),
      ...inClass(entry),
    })),
    mayPrint: mayPrint(ctx.actor),
    withdrawn: mayPrint(ctx.actor) ? await withdrawnOf(ctx, event.id) : [],
    devices: mayInspect(ctx.actor) ? await devicesOf(ctx, event.id) : [],
  };
}
