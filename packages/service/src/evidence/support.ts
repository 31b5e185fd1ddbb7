import { Prisma } from "@trunnion/db";
import type { EvidenceTarget, EvidenceTargetKind, State } from "@trunnion/register";
import type { Context } from "../context";
import { type PieceLine, pieceFields, pieceLine } from "./piece";
import { linkColumn, linkColumns, targetOf } from "./target";

/** A piece with what it supports by one link. */
export interface SupportLine extends PieceLine {
  readonly linkId: string;
  readonly target: EvidenceTarget;
  /** Page, frame or corner that shows it; empty where not said. */
  readonly locus: string;
  /** Key of the one characteristic that it shows of its target; empty for all of it. */
  readonly characteristic: string;
}

interface LinkRow {
  readonly linkId: string;
  readonly kind: EvidenceTargetKind;
  readonly targetId: string;
  readonly carId: string;
  readonly locus: string | null;
  readonly characteristic: string | null;
  readonly id: string;
  readonly mediaType: string;
  readonly bytes: number;
  readonly width: number | null;
  readonly height: number | null;
  readonly quarterTurns: number;
  readonly caption: string | null;
  readonly takenText: string | null;
}

/** Tables that belong to a car, with the column of a link that points to each. */
const tables = {
  asBuiltValue: "as_built_value",
  modification: "modification",
  settingSheet: "setting_sheet",
  carIdentity: "car_identity",
  carStatusSpan: "car_status_span",
  historyNote: "history_note",
} as const satisfies Partial<Record<EvidenceTargetKind, string>>;

/** Links to everything of some cars. A branch per table, so that each goes by its index. */
function linksSql(clubId: string, carIds: readonly string[]): Prisma.Sql {
  const club = Prisma.sql`${clubId}::uuid`;
  const cars = Prisma.sql`ANY(${[...carIds]}::uuid[])`;
  const branches = Object.entries(tables).map(([kind, table]) => {
    const name = Prisma.raw(`"${table}"`);
    return Prisma.sql`SELECT l.id, l.evidence_id, l.locus, l.characteristic, ${kind} AS kind, t.id AS target_id, t.car_id
      FROM ${name} t JOIN evidence_link l ON l.club_id = t.club_id AND l.${Prisma.raw(`"${table}_id"`)} = t.id
      WHERE t.club_id = ${club} AND t.car_id = ${cars}`;
  });
  return Prisma.join(
    [
      Prisma.sql`SELECT l.id, l.evidence_id, l.locus, l.characteristic, 'car' AS kind, l.car_id AS target_id, l.car_id
        FROM evidence_link l WHERE l.club_id = ${club} AND l.car_id = ${cars}`,
      Prisma.sql`SELECT l.id, l.evidence_id, l.locus, l.characteristic, 'finding' AS kind, f.id AS target_id, e.car_id
        FROM entry e JOIN finding f ON f.club_id = e.club_id AND f.entry_id = e.id
        JOIN evidence_link l ON l.club_id = f.club_id AND l.finding_id = f.id
        WHERE e.club_id = ${club} AND e.car_id = ${cars}`,
      ...branches,
    ],
    " UNION ALL ",
  );
}

function supportOfRow(row: LinkRow): SupportLine {
  const { linkId, kind, targetId, locus, characteristic } = row;
  return {
    ...pieceLine(row),
    linkId,
    target: { kind, id: targetId },
    locus: locus ?? "",
    characteristic: characteristic ?? "",
  };
}

async function linksOfCars(ctx: Context, carIds: readonly string[]): Promise<readonly LinkRow[]> {
  if (carIds.length === 0) return [];
  return ctx.db.$queryRaw<LinkRow[]>`
    SELECT l.id::text AS "linkId", l.kind, l.target_id::text AS "targetId", l.car_id::text AS "carId", l.locus,
      l.characteristic, e.id::text, e.media_type AS "mediaType", e.bytes, e.width, e.height, e.quarter_turns AS "quarterTurns",
      e.caption, e.taken_text AS "takenText"
    FROM (${linksSql(ctx.club.id, carIds)}) l
    JOIN evidence e ON e.club_id = ${ctx.club.id}::uuid AND e.id = l.evidence_id
    WHERE e.withdrawn_at IS NULL
    ORDER BY e.taken_latest NULLS LAST, e.id, l.id`;
}

/** What supports what of some cars, by the target's id; withdrawn pieces are left out. Earliest taken first. */
export async function evidenceOf(
  ctx: Context,
  carIds: readonly string[],
): Promise<ReadonlyMap<string, readonly SupportLine[]>> {
  const found = new Map<string, SupportLine[]>();
  for (const row of await linksOfCars(ctx, carIds)) {
    const list = found.get(row.targetId) ?? [];
    list.push(supportOfRow(row));
    found.set(row.targetId, list);
  }
  return found;
}

/** How many pieces each car has, whatever of it they support; a car without any is left out. */
export async function evidenceCounts(
  ctx: Context,
  carIds: readonly string[],
): Promise<ReadonlyMap<string, number>> {
  const pieces = new Map<string, Set<string>>();
  for (const { carId, id } of await linksOfCars(ctx, carIds)) {
    const set = pieces.get(carId) ?? new Set();
    pieces.set(carId, set.add(id));
  }
  return new Map([...pieces].map(([carId, set]) => [carId, set.size]));
}

/** What supports some targets of one kind, by the target's id: entries of a specification, decisions on numbers. */
export async function evidenceFor(
  ctx: Context,
  kind: EvidenceTargetKind,
  ids: readonly string[],
): Promise<ReadonlyMap<string, readonly SupportLine[]>> {
  const rows = await ctx.db.evidenceLink.findMany({
    where: { [linkColumn(kind)]: { in: [...ids] }, evidence: { withdrawnAt: null } },
    select: {
      id: true,
      locus: true,
      characteristic: true,
      ...linkColumns,
      evidence: { select: pieceFields },
    },
    orderBy: [{ evidence: { takenLatest: { sort: "asc", nulls: "last" } } }, { id: "asc" }],
  });
  const found = new Map<string, SupportLine[]>();
  for (const { id, locus, characteristic, evidence, ...columns } of rows) {
    const target = targetOf(columns);
    const list = found.get(target.id) ?? [];
    list.push({
      ...pieceLine(evidence),
      linkId: id,
      target,
      locus: locus ?? "",
      characteristic: characteristic ?? "",
    });
    found.set(target.id, list);
  }
  return found;
}

/** What supports what of one car, for its page. */
export interface CarSupport {
  /** By the key of a value of its state (`stateKey`), and by the id of whatever else is supported. */
  readonly support: Readonly<Record<string, readonly SupportLine[]>>;
  /** Pieces in all. */
  readonly evidence: number;
}

/** What supports each value of a car's state and everything else of it, with how many pieces there are. */
export async function carSupport(ctx: Context, carId: string, state: State): Promise<CarSupport> {
  const links = await evidenceOf(ctx, [carId]);
  const pieces = new Set([...links.values()].flat().map(({ id }) => id));
  const ofState = await evidenceOfState(ctx, state, links);
  return { support: Object.fromEntries([...links, ...ofState]), evidence: pieces.size };
}

/**
 * What supports each value of a car's state, by its key (`stateKey`): the as-built value, the modification or the setting
 * sheet that it comes from. Values that nothing supports are left out.
 */
async function evidenceOfState(
  ctx: Context,
  state: State,
  links: ReadonlyMap<string, readonly SupportLine[]>,
): Promise<ReadonlyMap<string, readonly SupportLine[]>> {
  if (links.size === 0) return new Map();
  const readingIds = [...state.values()]
    .filter(({ origin }) => origin === "reading")
    .map(({ originId }) => originId);
  const readings = await ctx.db.reading.findMany({
    where: { id: { in: readingIds } },
    select: { id: true, settingSheetId: true },
  });
  const sheetOf = new Map(readings.map(({ id, settingSheetId }) => [id, settingSheetId]));
  return new Map(
    [...state].flatMap(([key, { originId }]) => {
      const support = links
        .get(sheetOf.get(originId) ?? originId)
        ?.filter(({ characteristic }) => characteristic === "" || key.startsWith(`${characteristic} `));
      return support && support.length > 0 ? [[key, support] as const] : [];
    }),
  );
}
