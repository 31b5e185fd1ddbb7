import { type Assembly, deviating } from "@trunnion/register";
import { assessAll } from "../assessment";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type EventEntry, type EventPage, entriesOf, findEvent } from "../event";
import { mayPrint } from "../printed-sheet";
import { recordsOf } from "../record";

/** An entry with what differs on its car, by assembly. */
export interface EventEntryLine extends EventEntry {
  /** Characteristics that differ from factory on the day; missing for a car that is not on the register. */
  readonly deviating?: number;
  readonly assemblies?: Readonly<Partial<Record<Assembly, number>>>;
}

export interface EventView {
  readonly club: ClubFacts;
  readonly event: EventPage;
  readonly entries: readonly EventEntryLine[];
  /** Whether the reader may print its sheets. */
  readonly mayPrint: boolean;
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
  return {
    club: ctx.club,
    event,
    entries: entries.map((entry) => ({ ...entry, ...counted.get(entry.carId ?? "") })),
    mayPrint: mayPrint(ctx.actor),
  };
}
