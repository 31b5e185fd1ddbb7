import type { SpecificationStatus } from "@trunnion/db";
import {
  type CharacteristicBook,
  checkSpecification,
  type EntryChangeLine,
  type EntryLine,
  type EntryWords,
  entryChangeLine,
  entryLine,
  inWalkingOrder,
  type Specification,
  type SpecificationProblem,
  specificationDifference,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { dayOf } from "../day";
import { memberNames } from "../member-name";
import { type Moves, movesOf } from "../moved-verdict";
import { findSeries, listSeriesDetails, type SeriesDetail, seriesFacts } from "../series";
import { currentSpecifications, specificationOf } from "../specification";

/** One version of a specification in the list: who, when, why. */
export interface VersionLine {
  readonly version: number;
  readonly status: SpecificationStatus;
  readonly entries: number;
  /** Who made it current, or who is drafting it; empty for the command line. */
  readonly by: string;
  /** ISO day it was begun. */
  readonly begun: string;
  /** ISO days; missing while it has not come to that. */
  readonly madeCurrent?: string;
  readonly superseded?: string;
  /** Why it was made current. */
  readonly note: string;
  /** "series-1, version 2"; missing when written anew. */
  readonly copiedFrom?: { readonly series: string; readonly version: number };
}

const mayEdit = (ctx: Context) =>
  ctx.actor.roles.some((role) => role === "registrar" || role === "fleetManager");

/** Who made each version current, by the journal: its drafter need not be who decided. */
async function decidersOf(ctx: Context, ids: readonly string[]): Promise<ReadonlyMap<string, string | null>> {
  const rows = await ctx.db.journalEntry.findMany({
    where: {
      noun: "specification",
      nounId: { in: [...ids] },
      action: { in: ["specification.makeCurrent", "specification.add"] },
    },
    select: { nounId: true, personId: true },
  });
  return new Map(rows.map(({ nounId, personId }) => [nounId, personId]));
}

async function versionsOf(ctx: Context, seriesId: string): Promise<readonly VersionLine[]> {
  const rows = await ctx.db.specification.findMany({
    where: { seriesId },
    select: {
      id: true,
      version: true,
      status: true,
      note: true,
      madeById: true,
      recordedAt: true,
      madeCurrentAt: true,
      supersededAt: true,
      copiedFrom: { select: { version: true, series: { select: { slug: true } } } },
      _count: { select: { entries: true } },
    },
    orderBy: { version: "desc" },
  });
  const deciders = await decidersOf(
    ctx,
    rows.map(({ id }) => id),
  );
  const personOf = ({ id, madeById }: (typeof rows)[number]) => deciders.get(id) ?? madeById;
  const names = await memberNames(
    ctx,
    rows.flatMap((row) => personOf(row) ?? []),
  );
  return rows.map((row) => ({
    version: row.version,
    status: row.status,
    entries: row._count.entries,
    by: names.get(personOf(row) ?? "") ?? "",
    begun: dayOf(row.recordedAt),
    ...(row.madeCurrentAt === null ? {} : { madeCurrent: dayOf(row.madeCurrentAt) }),
    ...(row.supersededAt === null ? {} : { superseded: dayOf(row.supersededAt) }),
    note: row.note ?? "",
    ...(row.copiedFrom === null
      ? {}
      : { copiedFrom: { series: row.copiedFrom.series.slug, version: row.copiedFrom.version } }),
  }));
}

/** The club's series with where each one's specification stands. */
export interface SpecificationOverview {
  readonly club: ClubFacts;
  readonly mayEdit: boolean;
  readonly series: readonly {
    readonly slug: string;
    readonly name: string;
    readonly marque: string;
    readonly cars: number;
    readonly current?: { readonly version: number; readonly entries: number; readonly since: string };
    readonly draft?: { readonly version: number; readonly entries: number };
  }[];
  /** How many characteristics the club has of its own. */
  readonly ownCharacteristics: number;
}

/** Where the specification of each series stands, in the series' order. */
export async function specificationOverview(ctx: Context): Promise<SpecificationOverview> {
  const rows = await ctx.db.series.findMany({
    select: {
      slug: true,
      name: true,
      marque: { select: { name: true } },
      specifications: {
        where: { status: { in: ["current", "draft"] } },
        select: {
          version: true,
          status: true,
          madeCurrentAt: true,
          recordedAt: true,
          _count: { select: { entries: true } },
        },
      },
      _count: { select: { cars: true } },
    },
    orderBy: { ordinal: "asc" },
  });
  const series = rows.map(({ slug, name, marque, specifications, _count }) => {
    const of = (status: SpecificationStatus) => specifications.find((one) => one.status === status);
    const [current, draft] = [of("current"), of("draft")];
    return {
      slug,
      name,
      marque: marque.name,
      cars: _count.cars,
      ...(current
        ? {
            current: {
              version: current.version,
              entries: current._count.entries,
              since: dayOf(current.madeCurrentAt ?? current.recordedAt),
            },
          }
        : {}),
      ...(draft ? { draft: { version: draft.version, entries: draft._count.entries } } : {}),
    };
  });
  return {
    club: ctx.club,
    mayEdit: mayEdit(ctx),
    series,
    ownCharacteristics: await ctx.db.characteristic.count(),
  };
}

/** One version of a series' specification, ready to be read. */
export interface SpecificationPage {
  readonly club: ClubFacts;
  readonly mayEdit: boolean;
  readonly series: SeriesDetail;
  /** Missing where the series has no specification at all. */
  readonly shown?: VersionLine & { readonly revision: number };
  /** In walking order. */
  readonly lines: readonly EntryLine[];
  /** Contradictions that keep it from being made current; of a draft only. */
  readonly problems: readonly SpecificationProblem[];
  /** Latest first. */
  readonly versions: readonly VersionLine[];
  /** Series whose current specification could be copied. */
  readonly copyable: readonly { readonly slug: string; readonly name: string }[];
}

function wordsFor(ctx: Context, book: CharacteristicBook, series: SeriesDetail): EntryWords {
  const options = Object.fromEntries(series.options.map(({ code, label }) => [code, label]));
  return { book, system: ctx.club.unitSystem, pattern: series.pattern, options };
}

/**
 * A series' specification by assembly, with its versions: the current one, or the version asked for.
 *
 * @throws Refusal SERIES_NOT_FOUND; SPECIFICATION_NOT_FOUND for a version there is none of
 */
export async function specificationPage(
  ctx: Context,
  reference: { readonly series: string; readonly version?: number },
): Promise<SpecificationPage> {
  const all = await listSeriesDetails(ctx);
  const series = await findSeries(ctx, reference.series);
  const versions = await versionsOf(ctx, series.id);
  const wanted = reference.version ?? versions.find(({ status }) => status === "current")?.version;
  const book = await bookOf(ctx);
  const found = wanted === undefined ? undefined : await specificationOf(ctx, { series, version: wanted });
  const words = wordsFor(ctx, book, series);
  const shown = versions.find(({ version }) => version === found?.version);
  const others = await currentSpecifications(
    ctx,
    all.map(({ id }) => id),
  );
  return {
    club: ctx.club,
    mayEdit: mayEdit(ctx),
    series,
    ...(shown && found ? { shown: { ...shown, revision: found.revision } } : {}),
    lines: inWalkingOrder(
      (found?.entries ?? []).map((entry) => entryLine(entry, words)),
      book,
    ),
    problems: found?.status === "draft" ? checkSpecification(found, book, seriesFacts(series)) : [],
    versions,
    copyable: all
      .filter(({ id }) => id !== series.id && others.has(id))
      .map(({ slug, name }) => ({ slug, name })),
  };
}

/** One of two specifications that are compared. */
export interface Compared {
  readonly series: { readonly slug: string; readonly name: string };
  readonly version: number;
  readonly status: SpecificationStatus;
}

/** What differs between two specifications, in words. */
export interface ComparePage {
  readonly club: ClubFacts;
  readonly before: Compared;
  readonly after: Compared;
  readonly changes: readonly EntryChangeLine[];
  /** Entries both have alike. */
  readonly alike: number;
  /** Every version of every series, to choose others from. */
  readonly choices: readonly Compared[];
}

function differenceLines(
  before: readonly Specification["entries"][number][],
  after: readonly Specification["entries"][number][],
  words: EntryWords,
): readonly EntryChangeLine[] {
  const lines = specificationDifference(before, after).map((change) => entryChangeLine(change, words));
  return inWalkingOrder(lines, words.book);
}

/** A side of a comparison as an address names it: a series, and a version unless it is the current one. */
export interface ComparedReference {
  readonly series: string;
  readonly version?: number;
}

/**
 * What differs between any two specifications: versions of one series, or of two.
 *
 * @throws Refusal SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND
 */
export async function comparePage(
  ctx: Context,
  reference: { readonly before: ComparedReference; readonly after: ComparedReference },
): Promise<ComparePage> {
  const take = async ({ series: slug, version }: ComparedReference) => {
    const series = await findSeries(ctx, slug);
    const found = await specificationOf(ctx, { series, ...(version === undefined ? {} : { version }) });
    return { series, found };
  };
  const [before, after] = [await take(reference.before), await take(reference.after)];
  const book = await bookOf(ctx);
  // Numbers of two series are not of one pattern: their serials are told as they are.
  const { pattern: _, ...plain } = wordsFor(ctx, book, after.series);
  const words = before.series.id === after.series.id ? wordsFor(ctx, book, after.series) : plain;
  const changes = differenceLines(before.found.entries, after.found.entries, words);
  const rows = await ctx.db.specification.findMany({
    select: { version: true, status: true, series: { select: { slug: true, name: true } } },
    orderBy: [{ series: { ordinal: "asc" } }, { version: "desc" }],
    take: 500,
  });
  const face = ({ series, found }: typeof before): Compared => ({
    series: { slug: series.slug, name: series.name },
    version: found.version,
    status: found.status,
  });
  return {
    club: ctx.club,
    before: face(before),
    after: face(after),
    changes,
    alike: after.found.entries.length - changes.filter(({ kind }) => kind !== "removed").length,
    choices: rows,
  };
}

/** Most moved verdicts told one by one; the counts are of all. */
const TOLD = 300;

/** What making a draft current would do. */
export interface DraftReview {
  readonly club: ClubFacts;
  /** Whether whoever looks may make it current: a draft, and their role. */
  readonly mayEdit: boolean;
  readonly series: { readonly slug: string; readonly name: string };
  readonly version: number;
  readonly revision: number;
  /** Version it takes the place of; 0 for none. */
  readonly current: number;
  readonly entries: number;
  readonly changes: readonly EntryChangeLine[];
  readonly problems: readonly SpecificationProblem[];
  readonly moves: Moves;
}

/**
 * What changes between the current version and a draft, and which verdicts on the series' cars that moves.
 *
 * @throws Refusal SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND
 */
export async function draftReview(
  ctx: Context,
  reference: { readonly series: string; readonly version: number },
): Promise<DraftReview> {
  const series = await findSeries(ctx, reference.series);
  const draft = await specificationOf(ctx, { series, version: reference.version });
  const current = (await currentSpecifications(ctx, [series.id])).get(series.id);
  const book = await bookOf(ctx);
  const words = wordsFor(ctx, book, series);
  return {
    club: ctx.club,
    mayEdit: mayEdit(ctx) && draft.status === "draft",
    series: { slug: series.slug, name: series.name },
    version: draft.version,
    revision: draft.revision,
    current: current?.version ?? 0,
    entries: draft.entries.length,
    changes: differenceLines(current?.entries ?? [], draft.entries, words),
    problems: checkSpecification(draft, book, seriesFacts(series)),
    moves: await movesOf(ctx, {
      seriesId: series.id,
      ...(current === undefined ? {} : { before: current }),
      after: draft,
      book,
      keep: TOLD,
    }),
  };
}
