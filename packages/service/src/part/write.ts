import {
  assemblies,
  foldName,
  foldText,
  Problems,
  partFeatureKinds,
  partFitStandings,
  partKinds,
  readPartFeatures,
  readPartFits,
  refused,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { changedFields, differencesOf } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { lineInput, proseInput, provenanceFields } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { listSeriesDetails } from "../series";
import { provenanceOf } from "../source";
import { valueColumns } from "../value-columns";
import { type PartTexts, partTexts, wantedFields } from "./policy";
import { findPart, partLimit } from "./read";

const fitRow = z.object({
  series: lineInput(60).default(""),
  standing: z.enum(["", ...partFitStandings]).default(""),
  serialFrom: lineInput(9).default(""),
  serialTo: lineInput(9).default(""),
  note: lineInput(300).default(""),
});
const featureRow = z.object({
  about: lineInput(120).default(""),
  kind: z.enum(partFeatureKinds).default("characteristic"),
  value: lineInput(200).default(""),
  tells: z.enum(["yes", "no"]).default("no"),
});

const partFields = {
  assembly: z.enum(assemblies, "choose an assembly"),
  /** Where it sits: parts of one place stand in for one another. */
  place: lineInput(80).min(1, "say where it sits, as for the others of its place: front caliper"),
  name: lineInput(120).min(1, "say what it is"),
  kind: z.enum(partKinds, "choose where it comes from"),
  origin: lineInput(160).default(""),
  partNumber: lineInput(60).default(""),
  note: proseInput(2_000).default(""),
  fits: z.array(fitRow).max(200).default([]),
  features: z.array(featureRow).max(40).default([]),
  ...provenanceFields,
} as const;

export const addPartInput = z.object(partFields);
export type AddPartInput = z.infer<typeof addPartInput>;

export const changePartInput = z.object({
  part: lineInput(60).min(1),
  /** Version the form was opened with. */
  version: z.coerce.number().int().min(1),
  /** What the fields said when the form was opened. */
  opened: z.record(z.string().max(40), z.string().max(8_000)).default({}),
  ...partFields,
});
export type ChangePartInput = z.infer<typeof changePartInput>;

async function readPart(ctx: Context, input: AddPartInput) {
  const problems = new Problems();
  const [book, series] = [await bookOf(ctx), await listSeriesDetails(ctx)];
  const rows = input.features.map((row) => ({ ...row, tells: row.tells === "yes" }));
  const features = readPartFeatures(rows, { book, problems });
  const fits = readPartFits(input.fits, { series, problems });
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  const named = new Map(series.map(({ slug, id, name }) => [slug, { id, name }]));
  return { features, fits: fits.map((fit) => ({ ...fit, at: named.get(fit.series) })), provenance };
}
type Read = Awaited<ReturnType<typeof readPart>>;

const columnsOf = (input: AddPartInput) => ({
  assembly: input.assembly,
  place: input.place,
  placeKey: foldName(input.place),
  name: input.name,
  kind: input.kind,
  origin: input.origin === "" ? null : input.origin,
  partNumber: input.partNumber === "" ? null : input.partNumber,
  note: input.note === "" ? null : input.note,
});

async function writeRows(ctx: Context, partId: string, { fits, features }: Read): Promise<void> {
  await ctx.db.partFit.createMany({
    data: fits.map(({ standing, serialFrom, serialTo, note, at }) => ({
      partId,
      seriesId: at?.id ?? "",
      standing,
      serialFrom: serialFrom ?? null,
      serialTo: serialTo ?? null,
      note: note ?? null,
    })),
  });
  await ctx.db.partFeature.createMany({
    data: features.map(({ kind, characteristic, label, tells, value }, index) => ({
      partId,
      ordinal: index + 1,
      kind,
      tells,
      characteristic: characteristic ?? null,
      spot: characteristic === undefined ? label : null,
      ...valueColumns(value),
    })),
  });
}

const wantedTexts = (input: AddPartInput, { fits, features, provenance }: Read): PartTexts =>
  partTexts({
    ...input,
    source: provenance.title,
    fits: fits.map((fit) => ({ ...fit, seriesName: fit.at?.name ?? fit.series })),
    features,
  });

/** Words of a name as an address may have them: "Windscreen, coupé" → "windscreen-coupe". */
const slugOf = (text: string) =>
  foldText(text)
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, 50)
    .replace(/^-|-$/g, "");

/** A short name nobody has yet: of its name, with its origin where that is taken, else counted. */
async function freeSlug(ctx: Context, { name, origin }: AddPartInput): Promise<string> {
  const base = slugOf(name) || "part";
  const rows = await ctx.db.part.findMany({ where: { slug: { startsWith: base } }, select: { slug: true } });
  const taken = new Set(rows.map(({ slug }) => slug));
  const free = [base, slugOf(`${name} ${origin}`)].find((slug) => slug !== "" && !taken.has(slug));
  if (free !== undefined) return free;
  for (let next = 2; ; next += 1) if (!taken.has(`${base}-${next}`)) return `${base}-${next}`;
}

/**
 * Puts a part on the club's list and tells its short name.
 *
 * @throws Refusal ROLE_NEEDED, TOO_MANY_PARTS; Invalid for everything that cannot be read
 */
export async function addPart(ctx: Context, input: AddPartInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  if ((await ctx.db.part.count({ where: { withdrawnAt: null } })) >= partLimit)
    throw refused("TOO_MANY_PARTS", { limit: partLimit });
  const read = await readPart(ctx, input);
  const [id, slug] = [uuid(), await freeSlug(ctx, input)];
  const provenance = await read.provenance.columns();
  const madeById = ctx.actor.personId;
  await ctx.db.part.create({ data: { id, slug, madeById, ...columnsOf(input), ...provenance } });
  await writeRows(ctx, id, read);
  const after = { slug, ...wantedTexts(input, read) };
  await writeJournal(ctx, [{ action: "part.add", noun: "part", nounId: id, after }]);
  return slug;
}

/**
 * Changes a part of the list; what it fits and what matters about it are taken as the form has them.
 *
 * @throws Refusal ROLE_NEEDED, PART_NOT_FOUND, CHANGED_MEANWHILE with both sides' values; Invalid
 */
export async function changePart(ctx: Context, input: ChangePartInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const part = await findPart(ctx, input.part);
  const read = await readPart(ctx, input);
  const [now, wanted] = [partTexts(part), wantedTexts(input, read)];
  const fields = wantedFields(now, wanted);
  const differences = differencesOf(fields, input.opened);
  if (input.version !== part.version)
    throw refused("CHANGED_MEANWHILE", { what: "this part", version: part.version, differences });
  const line = changedFields(fields);
  if (!line) return;
  const provenance = await read.provenance.columns();
  await ctx.db.part.update({
    where: { clubId_id: { clubId: ctx.club.id, id: part.id } },
    data: { ...columnsOf(input), ...provenance, version: { increment: 1 } },
  });
  await ctx.db.partFit.deleteMany({ where: { partId: part.id } });
  await ctx.db.partFeature.deleteMany({ where: { partId: part.id } });
  await writeRows(ctx, part.id, read);
  await writeJournal(ctx, [{ action: "part.change", noun: "part", nounId: part.id, ...line }]);
}

export const withdrawPartInput = z.object({
  part: lineInput(60).min(1),
  reason: lineInput(300).min(1, "say why, for whoever looks for it"),
});
export type WithdrawPartInput = z.infer<typeof withdrawPartInput>;

/** Takes a part off the list; its notes stay with it. @throws Refusal ROLE_NEEDED, PART_NOT_FOUND */
export async function withdrawPart(ctx: Context, { part: slug, reason }: WithdrawPartInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { id } = await findPart(ctx, slug);
  const where = { clubId_id: { clubId: ctx.club.id, id } };
  await ctx.db.part.update({ where, data: { withdrawnAt: ctx.now, withdrawnReason: reason } });
  await writeJournal(ctx, [{ action: "part.withdraw", noun: "part", nounId: id, reason, before: { slug } }]);
}
