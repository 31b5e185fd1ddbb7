import { type FieldDifference, Problems, refused } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import type { PublicExtractInput } from "./policy";
import { choiceOf, type ExtractChoice } from "./read";

type Wanted = Omit<ExtractChoice, "version">;

const say = (list: readonly string[]) => list.join(", ");

function differences(now: ExtractChoice, wanted: Wanted): readonly FieldDifference[] {
  const shown: readonly (readonly [string, string, (choice: Wanted) => string])[] = [
    ["open", "Shown to everybody", ({ open }) => (open ? "yes" : "no")],
    ["parts", "Parts", ({ parts }) => say(parts)],
    ["characteristics", "Characteristics", ({ characteristics }) => say(characteristics)],
    ["series", "Series", ({ series }) => say(series)],
    ["lead", "At the head", ({ lead }) => lead],
  ];
  return shown
    .map(([field, label, text]) => ({ field, label, was: "", theirs: text(now), yours: text(wanted) }))
    .filter(({ theirs, yours }) => theirs !== yours);
}

/**
 * Chooses what everybody may see of the club's cars. Tells the version of the choice afterwards.
 *
 * @throws Refusal ROLE_NEEDED, CHANGED_MEANWHILE; Invalid for a characteristic or series that there is not
 */
export async function choosePublicExtract(ctx: Context, input: PublicExtractInput): Promise<number> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const book = await bookOf(ctx);
  const series = new Set((await ctx.db.series.findMany({ select: { slug: true } })).map(({ slug }) => slug));
  const problems = new Problems();
  for (const key of input.characteristics) {
    if (!book.find(key)) problems.add("characteristics", `There is no characteristic "${key}".`);
  }
  for (const slug of input.series)
    if (!series.has(slug)) problems.add("series", `There is no series "${slug}".`);
  problems.throwIfAny();
  const now = await choiceOf(ctx);
  const lead = input.lead.trim();
  const wanted = { ...input, open: input.open === "yes", lead };
  const changes = differences(now, wanted);
  if (now.version !== input.version)
    throw refused("CHANGED_MEANWHILE", {
      what: "what the public may see",
      version: now.version,
      differences: changes,
    });
  if (changes.length === 0) return now.version;
  const version = now.version + 1;
  const { open, parts, characteristics } = wanted;
  const data = {
    open,
    parts,
    characteristics,
    series: wanted.series,
    lead: lead === "" ? null : lead,
    version,
  };
  const { id } = await ctx.db.publicExtract.upsert({
    where: { clubId: ctx.club.id },
    create: data,
    update: data,
    select: { id: true },
  });
  const text = (side: "theirs" | "yours") =>
    Object.fromEntries(changes.map((change) => [change.field, change[side]]));
  await writeJournal(ctx, [
    {
      action: "extract.choose",
      noun: "publicExtract",
      nounId: id,
      before: text("theirs"),
      after: text("yours"),
    },
  ]);
  return version;
}
