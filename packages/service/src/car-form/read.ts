import type { CarStatus, IdentityKind, IdentityStanding, Trust } from "@trunnion/db";
import type { Characteristic, Side } from "@trunnion/register";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { dayOrNothing } from "../day";
import { carReference } from "../record";
import { requireRole } from "../role";
import { listSeriesDetails, type SeriesDetail } from "../series";
import { listSources, type SourceLine } from "../source";

/** Where a row's statement comes from, for a form. */
export interface RowProvenance {
  /** Id and title of the source; both empty where none is given. */
  readonly sourceId: string;
  readonly source: string;
  readonly locus: string;
  readonly trust: Trust;
}

export interface IdentityFormRow extends RowProvenance {
  readonly id: string;
  readonly kind: IdentityKind;
  readonly number: string;
  readonly standing: IdentityStanding;
  readonly from: string;
  readonly to: string;
}

export interface StatusFormRow extends RowProvenance {
  readonly id: string;
  readonly status: CarStatus;
  readonly from: string;
  /** ISO day; empty for the present status. */
  readonly to: string;
}

export interface NoteFormRow extends RowProvenance {
  readonly id: string;
  readonly on: string;
  readonly text: string;
}

export interface AsBuiltFormRow extends RowProvenance {
  readonly id: string;
  readonly characteristic: string;
  readonly label: string;
  readonly side: Side;
  readonly entered: string;
}

/** Who kept the car, and when. Personal data. */
export interface KeepershipFormRow extends RowProvenance {
  readonly id: string;
  readonly keeperId: string;
  readonly name: string;
  readonly erased: boolean;
  readonly isMember: boolean;
  readonly from: string;
  /** ISO day; empty for the present keeper. */
  readonly to: string;
}

/** A car's record row by row, for the forms that change it. */
export interface CarForm {
  readonly reference: string;
  readonly chassis: string;
  readonly claim: number;
  readonly version: number;
  /** Last place in the journal that speaks of this car. */
  readonly openedAt: number;
  /** The car this record turned out to be of. */
  readonly mergedInto?: string;
  readonly series: string;
  readonly seriesName: string;
  readonly built: string;
  readonly firstRegistered: string;
  readonly remarks: string;
  readonly options: readonly string[];
  readonly identities: readonly IdentityFormRow[];
  readonly statuses: readonly StatusFormRow[];
  readonly notes: readonly NoteFormRow[];
  readonly asBuilt: readonly AsBuiltFormRow[];
  readonly keepers: readonly KeepershipFormRow[];
  readonly sources: readonly SourceLine[];
  readonly allSeries: readonly SeriesDetail[];
}

const withSource = { source: { select: { title: true } } } as const;

interface KnownRow {
  readonly sourceId: string | null;
  readonly source: { readonly title: string } | null;
  readonly locus: string | null;
  readonly trust: Trust;
}

const provenanceOf = ({ sourceId, source, locus, trust }: KnownRow): RowProvenance => ({
  sourceId: sourceId ?? "",
  source: source?.title ?? "",
  locus: locus ?? "",
  trust,
});

async function rowsOf({ db }: Context, carId: string) {
  return db.car.findFirstOrThrow({
    where: { id: carId },
    select: {
      mergedInto: { select: { chassis: true, claim: true } },
      identities: { include: withSource, orderBy: [{ kind: "asc" }, { id: "asc" }] },
      statuses: { include: withSource, orderBy: [{ to: { sort: "desc", nulls: "first" } }, { id: "desc" }] },
      histories: {
        include: withSource,
        orderBy: [{ onEarliest: { sort: "asc", nulls: "last" } }, { id: "asc" }],
      },
      asBuilt: { where: { supersededAt: null }, include: withSource, orderBy: { id: "asc" } },
      keeperships: {
        include: { ...withSource, keeper: true },
        orderBy: [{ to: { sort: "desc", nulls: "first" } }, { id: "desc" }],
      },
    },
  });
}
type Rows = Awaited<ReturnType<typeof rowsOf>>;

const identityRow = (row: Rows["identities"][number]): IdentityFormRow => ({
  id: row.id,
  kind: row.kind,
  number: row.number,
  standing: row.standing,
  from: row.fromText ?? "",
  to: row.toText ?? "",
  ...provenanceOf(row),
});

const statusRow = (row: Rows["statuses"][number]): StatusFormRow => ({
  id: row.id,
  status: row.status,
  from: row.fromText ?? "",
  to: dayOrNothing(row.to) ?? "",
  ...provenanceOf(row),
});

const keepershipRow = (row: Rows["keeperships"][number]): KeepershipFormRow => ({
  id: row.id,
  keeperId: row.keeperId,
  name: row.keeper.erasedAt === null ? (row.keeper.name ?? "name not recorded") : "erased",
  erased: row.keeper.erasedAt !== null,
  isMember: row.keeper.membershipId !== null,
  from: row.fromText ?? "",
  to: dayOrNothing(row.to) ?? "",
  ...provenanceOf(row),
});

/** In the order one walks round a car by: as the dictionary has them. */
function asBuiltRows(rows: Rows["asBuilt"], all: readonly Characteristic[]): readonly AsBuiltFormRow[] {
  const place = new Map(all.map(({ key, label }, index) => [key, { label, index }]));
  return rows
    .map((row) => ({
      id: row.id,
      characteristic: row.characteristic,
      label: place.get(row.characteristic)?.label ?? row.characteristic,
      side: row.side,
      entered: row.entered,
      ...provenanceOf(row),
    }))
    .sort(
      (a, b) =>
        (place.get(a.characteristic)?.index ?? all.length) -
          (place.get(b.characteristic)?.index ?? all.length) || a.side.localeCompare(b.side),
    );
}

/**
 * A car's record row by row, with what forms choose from. Personal data among it.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND
 */
export async function carForm(ctx: Context, reference: string): Promise<CarForm> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const record = await findCar(ctx, reference);
  const rows = await rowsOf(ctx, record.id);
  const last = await ctx.db.journalEntry.findFirst({
    where: { carId: record.id },
    select: { sequence: true },
    orderBy: { sequence: "desc" },
  });
  const { reference: name, chassis, claim, version, series } = record;
  return {
    reference: name,
    chassis,
    claim,
    version,
    openedAt: Number(last?.sequence ?? 0),
    ...(rows.mergedInto ? { mergedInto: carReference(rows.mergedInto) } : {}),
    series: series?.slug ?? "",
    seriesName: series?.name ?? "",
    built: record.built ?? "",
    firstRegistered: record.firstRegistered ?? "",
    remarks: record.remarks ?? "",
    options: record.basis.options,
    identities: rows.identities.map(identityRow),
    statuses: rows.statuses.map(statusRow),
    notes: rows.histories.map((row) => ({
      id: row.id,
      on: row.onText ?? "",
      text: row.text,
      ...provenanceOf(row),
    })),
    asBuilt: asBuiltRows(rows.asBuilt, (await bookOf(ctx)).all),
    keepers: rows.keeperships.map(keepershipRow),
    sources: await listSources(ctx),
    allSeries: await listSeriesDetails(ctx),
  };
}

/** A characteristic to choose, found by its name. */
export interface CharacteristicChoice {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly sided: boolean;
  /** For a choice: what can be chosen. */
  readonly choices: readonly string[];
}

const choiceOf = (one: Characteristic): CharacteristicChoice => ({
  key: one.key,
  label: one.label,
  help: one.help,
  sided: one.sided,
  choices: one.kind === "choice" ? one.choices.map(({ label }) => label) : [],
});

const plain = (text: string) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** Characteristics of the dictionary and the club's own that have every word asked for in one of their names; at most 40. */
export async function findCharacteristics(
  ctx: Context,
  search: string,
): Promise<readonly CharacteristicChoice[]> {
  const words = plain(search)
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== "");
  if (words.length === 0) return [];
  const { all } = await bookOf(ctx);
  return all
    .filter(({ key, label, also = [] }) => {
      const names = plain([label, ...also, key].join(" "));
      return words.every((word) => names.includes(word));
    })
    .slice(0, 40)
    .map(choiceOf);
}

/** A characteristic by its key; nothing where the club has none of it. */
export async function characteristicChoice(
  ctx: Context,
  key: string,
): Promise<CharacteristicChoice | undefined> {
  const found = (await bookOf(ctx)).find(key);
  return found && choiceOf(found);
}
