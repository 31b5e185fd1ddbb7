import { chassisKey, refused } from "@trunnion/register";
import type { Context } from "../context";
import { carReference } from "../record";
import { requireRole } from "../role";

/** What making two records one would do: rows that move, and rows that stay with the pointer because they are there already. */
export interface MergePreview {
  readonly into: { readonly id: string; readonly reference: string; readonly version: number };
  readonly from: { readonly id: string; readonly reference: string; readonly version: number };
  readonly parts: readonly { readonly what: string; readonly moved: number; readonly stays: number }[];
  /** Facts that differ and go into a note of the history, or are taken where the other has none. */
  readonly facts: readonly {
    readonly what: string;
    readonly said: string;
    readonly becomes: "taken" | "noted" | "same";
  }[];
}

const mergeFields = {
  id: true,
  chassis: true,
  claim: true,
  version: true,
  mergedIntoId: true,
  builtText: true,
  builtEarliest: true,
  builtLatest: true,
  firstRegisteredText: true,
  firstRegisteredEarliest: true,
  firstRegisteredLatest: true,
  remarks: true,
  identities: true,
  statuses: true,
  options: true,
  asBuilt: true,
  keeperships: { include: { keeper: { select: { id: true, name: true } } } },
  modifications: { select: { id: true, sequence: true } },
  settingSheets: { select: { id: true, sequence: true } },
  _count: {
    select: {
      histories: true,
      submissions: true,
      entries: true,
      datedItems: true,
      partNotes: true,
      evidenceLinks: true,
    },
  },
} as const;

async function mergeRow(ctx: Context, reference: string) {
  const [chassis = "", claim = "1"] = reference.split("~");
  const row = await ctx.db.car.findFirst({
    where: { chassisKey: chassisKey(chassis), claim: Number(claim) || 0 },
    select: mergeFields,
  });
  if (!row) throw refused("CAR_NOT_FOUND", { car: reference });
  return row;
}
export type MergeRow = Awaited<ReturnType<typeof mergeRow>>;

const sameName = (a: string | null, b: string | null) =>
  a !== null && b !== null && a.trim().toLowerCase() === b.trim().toLowerCase();

/** Which rows of one record move to the other; what it has already stays with the pointer, so that nothing is lost. */
export function movingRows(into: MergeRow, from: MergeRow) {
  const borne = new Set(into.identities.map(({ kind, numberKey }) => `${kind} ${numberKey}`));
  const isOpen = into.statuses.some(({ to }) => to === null);
  const codes = new Set(into.options.map(({ code }) => code));
  const kept = into.keeperships.filter(({ to }) => to === null);
  return {
    identities: from.identities.filter(({ kind, numberKey }) => !borne.has(`${kind} ${numberKey}`)),
    statuses: from.statuses.filter(({ to }) => to !== null || !isOpen),
    options: from.options.filter(({ code }) => !codes.has(code)),
    // The same person entered on both records keeps the car once.
    keeperships: from.keeperships.filter(
      ({ to, keeper }) =>
        to !== null ||
        !kept.some((one) => one.keeper.id === keeper.id || sameName(one.keeper.name, keeper.name)),
    ),
  };
}

/** What one record says of the car itself, beside what the other says. */
export function mergingFacts(into: MergeRow, from: MergeRow): MergePreview["facts"] {
  const pairs = [
    ["Built", into.builtText, from.builtText],
    ["First registered", into.firstRegisteredText, from.firstRegisteredText],
    ["Remarks", into.remarks, from.remarks],
  ] as const;
  return pairs.flatMap(([what, has, said]) => {
    if (said === null) return [];
    const becomes = has === null ? ("taken" as const) : has === said ? ("same" as const) : ("noted" as const);
    return [{ what, said, becomes }];
  });
}

/**
 * Both records, where they may become one.
 *
 * @throws Refusal CAR_NOT_FOUND, CAR_MERGED, MERGE_IMPOSSIBLE
 */
export async function mergingRows(
  ctx: Context,
  input: { readonly into: string; readonly from: string },
): Promise<{ readonly into: MergeRow; readonly from: MergeRow }> {
  const [into, from] = [await mergeRow(ctx, input.into), await mergeRow(ctx, input.from)];
  if (into.id === from.id) throw refused("MERGE_IMPOSSIBLE", { because: "they are one already." });
  for (const row of [into, from]) {
    if (row.mergedIntoId !== null) {
      throw refused("MERGE_IMPOSSIBLE", { because: `${carReference(row)} points to another car.` });
    }
  }
  return { into, from };
}

/**
 * What making two records one would do; writes nothing.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, MERGE_IMPOSSIBLE
 */
export async function previewMerge(
  ctx: Context,
  input: { readonly into: string; readonly from: string },
): Promise<MergePreview> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { into, from } = await mergingRows(ctx, input);
  const moving = movingRows(into, from);
  const named = (row: MergeRow) => ({ id: row.id, reference: carReference(row), version: row.version });
  const part = (what: string, moved: number, all: number) => ({ what, moved, stays: all - moved });
  const { _count: count } = from;
  const all = [
    part("numbers and marks", moving.identities.length, from.identities.length),
    part("statuses", moving.statuses.length, from.statuses.length),
    part("options", moving.options.length, from.options.length),
    part("keepers", moving.keeperships.length, from.keeperships.length),
    part("as-built values", from.asBuilt.length, from.asBuilt.length),
    part("notes", count.histories, count.histories),
    part("modifications", from.modifications.length, from.modifications.length),
    part("setting sheets", from.settingSheets.length, from.settingSheets.length),
    part("event entries", count.entries, count.entries),
    part("dated items", count.datedItems, count.datedItems),
    part("notes about parts", count.partNotes, count.partNotes),
    part("pieces of evidence", count.evidenceLinks, count.evidenceLinks),
  ];
  return {
    into: named(into),
    from: named(from),
    parts: all.filter(({ moved, stays }) => moved + stays > 0),
    facts: mergingFacts(into, from),
  };
}
