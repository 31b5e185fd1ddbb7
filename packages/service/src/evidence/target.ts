import type { Prisma } from "@trunnion/db";
import {
  type CharacteristicBook,
  carStatusWords,
  type EvidenceTarget,
  type EvidenceTargetKind,
  evidenceTargetReference,
  printValue,
  readEvidenceTarget,
  refused,
  type Side,
  sayDay,
  submissionStatusWords,
} from "@trunnion/register";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { dayOf } from "../day";
import { lineInput } from "../entry-input";
import { valueFrom } from "../value-columns";

/** One thing that evidence can support, in words. */
export interface TargetLine extends EvidenceTarget {
  /** The car it belongs to; none for an entry of a specification and a decision on a number. */
  readonly carId: string | null;
  readonly label: string;
  /** Something newer has taken its place: what supports it is still shown, and nothing new is linked to it. */
  readonly past: boolean;
}

/** Which to load: some by their ids, or all of a car. */
type Wanted = { readonly ids: readonly string[] } | { readonly carId: string };

/** Longest label, in characters. */
const LABEL = 110;

const cut = (text: string) => (text.length > LABEL ? `${text.slice(0, LABEL - 1).trimEnd()}…` : text);
const where = (wanted: Wanted) =>
  "ids" in wanted ? { id: { in: [...wanted.ids] } } : { carId: wanted.carId };

const sides = {
  leftRight: { left: "left", right: "right" },
  nearOff: { left: "nearside", right: "offside" },
} as const;

function nameOf(ctx: Context, book: CharacteristicBook, key: string, side: Side): string {
  const label = book.find(key)?.label ?? key;
  return side === "whole" ? label : `${label}, ${sides[ctx.club.sideWords][side]}`;
}

type Loader = (ctx: Context, wanted: Wanted, book: CharacteristicBook) => Promise<readonly TargetLine[]>;

const line = (kind: EvidenceTargetKind, row: Omit<TargetLine, "kind">): TargetLine => ({
  kind,
  ...row,
  label: cut(row.label),
});

const loadCars: Loader = async (ctx, wanted) => {
  const ids = "ids" in wanted ? [...wanted.ids] : [wanted.carId];
  const rows = await ctx.db.car.findMany({
    where: { id: { in: ids } },
    select: { id: true, chassis: true, claim: true },
  });
  return rows.map(({ id, chassis, claim }) => {
    const label = claim === 1 ? chassis : `${chassis}, claim ${claim}`;
    return line("car", { id, carId: id, label, past: false });
  });
};

const loadAsBuilt: Loader = async (ctx, wanted, book) => {
  const rows = await ctx.db.asBuiltValue.findMany({ where: where(wanted), orderBy: { id: "asc" } });
  return rows.map((row) => {
    const characteristic = book.find(row.characteristic);
    const value = valueFrom(row);
    const said = characteristic ? printValue(characteristic, value, { system: "asEntered" }) : value.entered;
    const label = `${nameOf(ctx, book, row.characteristic, row.side)}: ${said}`;
    return line("asBuiltValue", { id: row.id, carId: row.carId, label, past: row.supersededAt !== null });
  });
};

const loadModifications: Loader = async (ctx, wanted, book) => {
  const rows = await ctx.db.modification.findMany({
    where: { ...where(wanted), submission: { status: "accepted" } },
    select: {
      id: true,
      carId: true,
      fittedText: true,
      reason: true,
      supersededAt: true,
      changes: { select: { characteristic: true, side: true }, orderBy: { id: "asc" } },
    },
    orderBy: { sequence: "asc" },
  });
  return rows.map(({ id, carId, fittedText, reason, supersededAt, changes }) => {
    const what = [
      ...new Set(changes.map(({ characteristic }) => nameOf(ctx, book, characteristic, "whole"))),
    ];
    const parts = [what.slice(0, 3).join(", "), reason ?? ""].filter((part) => part !== "").join("; ");
    const label = `${fittedText ?? "date not known"}: ${parts === "" ? "no particulars" : parts}`;
    return line("modification", { id, carId, label, past: supersededAt !== null });
  });
};

const loadSheets: Loader = async (ctx, wanted) => {
  const rows = await ctx.db.settingSheet.findMany({
    where: where(wanted),
    select: { id: true, carId: true, on: true, supersededAt: true, _count: { select: { readings: true } } },
    orderBy: { sequence: "asc" },
  });
  return rows.map(({ id, carId, on, supersededAt, _count }) => {
    const count = _count.readings === 1 ? "1 reading" : `${_count.readings} readings`;
    return line("settingSheet", {
      id,
      carId,
      label: `${sayDay(dayOf(on))}, ${count}`,
      past: supersededAt !== null,
    });
  });
};

const results = {
  pass: "pass",
  advise: "advise",
  refuse: "refuse",
  notApplicable: "not applicable",
} as const;

const loadFindings: Loader = async (ctx, wanted) => {
  const rows = await ctx.db.finding.findMany({
    where: "ids" in wanted ? { id: { in: [...wanted.ids] } } : { entry: { carId: wanted.carId } },
    select: {
      id: true,
      checkCode: true,
      result: true,
      entry: { select: { carId: true, event: { select: { name: true, on: true } } } },
    },
    orderBy: { id: "asc" },
  });
  return rows.map(({ id, checkCode, result, entry }) => {
    const { name, on } = entry.event;
    const label = `${name}, ${sayDay(dayOf(on))}: ${checkCode}, ${results[result]}`;
    return line("finding", { id, carId: entry.carId, label, past: false });
  });
};

const numberWords = {
  chassis: "Chassis number",
  commission: "Commission number",
  engine: "Engine number",
  body: "Body number",
  registration: "Registration mark",
} as const;

const loadIdentities: Loader = async (ctx, wanted) => {
  const rows = await ctx.db.carIdentity.findMany({
    where: where(wanted),
    select: { id: true, carId: true, kind: true, number: true },
    orderBy: [{ kind: "asc" }, { id: "asc" }],
  });
  return rows.map(({ id, carId, kind, number }) =>
    line("carIdentity", { id, carId, label: `${numberWords[kind]} ${number}`, past: false }),
  );
};

const loadStatuses: Loader = async (ctx, wanted) => {
  const rows = await ctx.db.carStatusSpan.findMany({
    where: where(wanted),
    select: { id: true, carId: true, status: true, fromText: true, to: true },
    orderBy: { id: "asc" },
  });
  return rows.map(({ id, carId, status, fromText, to }) => {
    const span = [
      fromText === null ? "" : `since ${fromText}`,
      to === null ? "" : `until ${sayDay(dayOf(to))}`,
    ].filter((part) => part !== "");
    const label = [carStatusWords[status], ...span].join(", ");
    return line("carStatusSpan", { id, carId, label, past: false });
  });
};

const loadNotes: Loader = async (ctx, wanted) => {
  const rows = await ctx.db.historyNote.findMany({
    where: where(wanted),
    select: { id: true, carId: true, onText: true, text: true },
    orderBy: { id: "asc" },
  });
  return rows.map(({ id, carId, onText, text }) => {
    const label = `${onText ?? "date not known"}: ${text.replace(/\s+/g, " ")}`;
    return line("historyNote", { id, carId, label, past: false });
  });
};

const loadEntries: Loader = async (ctx, wanted, book) => {
  if (!("ids" in wanted)) return [];
  const rows = await ctx.db.specificationEntry.findMany({
    where: { id: { in: [...wanted.ids] } },
    select: {
      id: true,
      characteristic: true,
      side: true,
      specification: { select: { version: true, status: true, series: { select: { name: true } } } },
    },
  });
  return rows.map(({ id, characteristic, side, specification: { version, status, series } }) => {
    const label = `${nameOf(ctx, book, characteristic, side)}, specification of ${series.name}, version ${version}`;
    return line("specificationEntry", { id, carId: null, label, past: status === "superseded" });
  });
};

const loadDecisions: Loader = async (ctx, wanted) => {
  if (!("ids" in wanted)) return [];
  const rows = await ctx.db.numberDecision.findMany({
    where: { id: { in: [...wanted.ids] } },
    select: { id: true, kind: true, numberKey: true, supersededAt: true },
  });
  return rows.map(({ id, kind, numberKey, supersededAt }) => {
    const label = `${numberWords[kind]} ${numberKey}`;
    return line("numberDecision", { id, carId: null, label, past: supersededAt !== null });
  });
};

/** What is handed in and not decided: after that, what supports it supports what it became. */
const loadSubmissions: Loader = async (ctx, wanted) => {
  const rows = await ctx.db.submission.findMany({
    where: { ...where(wanted), status: { notIn: ["accepted", "withdrawn"] } },
    select: { id: true, carId: true, status: true, recordedAt: true },
    orderBy: { id: "asc" },
  });
  return rows.map(({ id, carId, status, recordedAt }) => {
    const label = `${submissionStatusWords[status]}, begun ${sayDay(dayOf(recordedAt))}`;
    return line("submission", { id, carId, label, past: status === "declined" });
  });
};

const loadParts: Loader = async (ctx, wanted) => {
  if (!("ids" in wanted)) return [];
  const rows = await ctx.db.part.findMany({
    where: { id: { in: [...wanted.ids] } },
    select: { id: true, name: true, place: true, withdrawnAt: true },
  });
  return rows.map(({ id, name, place, withdrawnAt }) =>
    line("part", { id, carId: null, label: `${name}, ${place}`, past: withdrawnAt !== null }),
  );
};

const loaders: Readonly<Record<EvidenceTargetKind, Loader>> = {
  car: loadCars,
  asBuiltValue: loadAsBuilt,
  modification: loadModifications,
  settingSheet: loadSheets,
  finding: loadFindings,
  carIdentity: loadIdentities,
  carStatusSpan: loadStatuses,
  historyNote: loadNotes,
  specificationEntry: loadEntries,
  numberDecision: loadDecisions,
  submission: loadSubmissions,
  part: loadParts,
};

/** Everything of a car that evidence can support, in the order the kinds are listed in. */
export async function targetsOfCar(ctx: Context, carId: string): Promise<readonly TargetLine[]> {
  const book = await bookOf(ctx);
  const found: TargetLine[] = [];
  for (const load of Object.values(loaders)) found.push(...(await load(ctx, { carId }, book)));
  return found;
}

/** Some targets in words, by their references; what is not there, or is another club's, is left out. */
export async function targetLines(
  ctx: Context,
  targets: readonly EvidenceTarget[],
): Promise<ReadonlyMap<string, TargetLine>> {
  const book = await bookOf(ctx);
  const found = new Map<string, TargetLine>();
  for (const kind of new Set(targets.map((target) => target.kind))) {
    const ids = targets.filter((target) => target.kind === kind).map(({ id }) => id);
    for (const one of await loaders[kind](ctx, { ids }, book)) found.set(evidenceTargetReference(one), one);
  }
  return found;
}

/**
 * One target in words.
 *
 * @throws Refusal EVIDENCE_TARGET_NOT_FOUND, also for one of another club
 */
export async function findTarget(ctx: Context, target: EvidenceTarget): Promise<TargetLine> {
  const reference = evidenceTargetReference(target);
  const found = (await targetLines(ctx, [target])).get(reference);
  if (!found) throw refused("EVIDENCE_TARGET_NOT_FOUND", { target: reference });
  return found;
}

/** The column of a link that points to a kind of target. */
export const linkColumn = (kind: EvidenceTargetKind) => `${kind}Id` as const;

/** A link as the database has it: exactly one of the columns is filled. */
export type LinkColumns = { readonly [K in `${EvidenceTargetKind}Id`]: string | null };

/** Every target column of a link, for a select. */
export const linkColumns = {
  carId: true,
  asBuiltValueId: true,
  modificationId: true,
  settingSheetId: true,
  findingId: true,
  carIdentityId: true,
  carStatusSpanId: true,
  historyNoteId: true,
  specificationEntryId: true,
  numberDecisionId: true,
  submissionId: true,
  partId: true,
} satisfies Prisma.EvidenceLinkSelect;

const kinds = Object.keys(loaders) as EvidenceTargetKind[];

/** What a link points to. */
export function targetOf(link: LinkColumns): EvidenceTarget {
  for (const kind of kinds) {
    const id = link[linkColumn(kind)];
    if (id !== null) return { kind, id };
  }
  throw new Error("a link of evidence points to nothing");
}

/** A target as a form names it. */
export const targetInput = lineInput(80).transform((text, check): EvidenceTarget => {
  const target = readEvidenceTarget(text);
  if (target) return target;
  check.addIssue({ code: "custom", message: "Choose what it supports from the list." });
  return z.NEVER;
});
