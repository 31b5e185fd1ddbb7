import { blankEntry, type Characteristic, type EntryText, entryText, refused } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { requireRole } from "../role";
import { findSeries, type SeriesDetail } from "../series";
import { listSources } from "../source";
import { specificationOf } from "../specification";
import { openedTexts } from "./policy";

/** Everything the form of one entry of a draft shows. */
export interface DraftEntry {
  readonly club: ClubFacts;
  readonly series: SeriesDetail;
  readonly version: number;
  readonly revision: number;
  /** Missing for an entry that is yet to be added. */
  readonly entry?: string;
  readonly text: EntryText;
  /** The same by the form's fields, to know what somebody else changed meanwhile. */
  readonly opened: Readonly<Record<string, string>>;
  /** Missing while none was chosen. */
  readonly characteristic?: Characteristic;
  /** For choosing one: key and label, in walking order. */
  readonly characteristics: readonly Pick<Characteristic, "key" | "label" | "assembly">[];
  readonly sources: readonly string[];
}

export interface DraftEntryReference {
  readonly series: string;
  readonly version: number;
  /** Id of the entry; left out for a new one. */
  readonly entry?: string;
  /** Characteristic of a new one, by key. */
  readonly characteristic?: string;
}

/**
 * One entry of a draft for its form, or an empty one of a characteristic.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND, SPECIFICATION_NOT_DRAFT, SPECIFICATION_ENTRY_NOT_FOUND
 */
export async function draftEntry(ctx: Context, reference: DraftEntryReference): Promise<DraftEntry> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const series = await findSeries(ctx, reference.series);
  const { status, entries, version, revision } = await specificationOf(ctx, {
    series,
    version: reference.version,
  });
  if (status !== "draft") throw refused("SPECIFICATION_NOT_DRAFT", { series: series.slug, version, status });
  const entry = entries.find(({ id }) => id === reference.entry);
  if (reference.entry !== undefined && !entry) {
    throw refused("SPECIFICATION_ENTRY_NOT_FOUND", { series: series.slug, version });
  }
  const book = await bookOf(ctx);
  const key = entry?.characteristic ?? reference.characteristic;
  const characteristic = key === undefined ? undefined : book.find(key);
  const text = entry ? entryText(entry, book) : { ...blankEntry, characteristic: characteristic?.key ?? "" };
  return {
    club: ctx.club,
    series,
    version,
    revision,
    text,
    opened: openedTexts(text),
    characteristics: book.all.map(({ key: own, label, assembly }) => ({ key: own, label, assembly })),
    sources: (await listSources(ctx)).map(({ title }) => title),
    ...(entry ? { entry: entry.id } : {}),
    ...(characteristic ? { characteristic } : {}),
  };
}
