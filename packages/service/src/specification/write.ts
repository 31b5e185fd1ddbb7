import type { Prisma, SourceKind } from "@trunnion/db";
import {
  type AlternativeRole,
  type Applicability,
  type CharacteristicBook,
  checkSpecification,
  type Limits,
  parseLimit,
  parseValue,
  refused,
  type Side,
  type SpecificationEntry,
  type Trust,
  type Value,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { prefixedValueColumns, valueColumns } from "../value-columns";

/** A publication or record that a specification rests on. */
export interface SourceInput {
  readonly title: string;
  readonly kind: SourceKind;
  readonly edition?: string;
}

/** One line of a specification, in the trade's notation. */
export interface SpecificationLine {
  readonly characteristic: string;
  readonly side?: Side;
  readonly nominal?: string;
  readonly lower?: string;
  readonly upper?: string;
  readonly alternatives?: readonly {
    readonly role: AlternativeRole;
    readonly value: string;
    readonly note?: string;
  }[];
  readonly applicability?: Applicability;
  readonly locus?: string;
  readonly trust?: Trust;
  readonly note?: string;
}

export interface AddSpecificationInput {
  readonly seriesId: string;
  readonly source: SourceInput;
  readonly lines: readonly SpecificationLine[];
  readonly note?: string;
  readonly book: CharacteristicBook;
}

/** Problems of a specification, each with its line. */
class Problems {
  readonly found: string[] = [];

  value(line: SpecificationLine, book: CharacteristicBook, text: string): Value | undefined {
    const characteristic = book.find(line.characteristic);
    if (!characteristic) {
      this.found.push(`there is no characteristic ${line.characteristic}`);
      return undefined;
    }
    const parsed = parseValue(characteristic, text);
    if (parsed.ok) return parsed.value;
    this.found.push(parsed.problem.message);
    return undefined;
  }

  limit(line: SpecificationLine, book: CharacteristicBook, text: string | undefined): number | undefined {
    const characteristic = book.find(line.characteristic);
    if (text === undefined || !characteristic) return undefined;
    const parsed = parseLimit(characteristic, text);
    if (parsed.ok) return parsed.si;
    this.found.push(parsed.problem.message);
    return undefined;
  }
}

function limitsOf(line: SpecificationLine, book: CharacteristicBook, problems: Problems): Limits | undefined {
  const lower = problems.limit(line, book, line.lower);
  const upper = problems.limit(line, book, line.upper);
  if (lower === undefined && upper === undefined) return undefined;
  return { ...(lower === undefined ? {} : { lower }), ...(upper === undefined ? {} : { upper }) };
}

function entryOf(
  line: SpecificationLine,
  input: AddSpecificationInput,
  problems: Problems,
): SpecificationEntry {
  const { book } = input;
  const { locus, trust = "documented" } = line;
  const source = { title: input.source.title, trust, ...(locus === undefined ? {} : { locus }) };
  const nominal = line.nominal === undefined ? undefined : problems.value(line, book, line.nominal);
  const limits = limitsOf(line, book, problems);
  const alternatives = (line.alternatives ?? []).flatMap(({ role, value: text, note }) => {
    const value = problems.value(line, book, text);
    return value === undefined ? [] : [{ role, value, source, ...(note === undefined ? {} : { note }) }];
  });
  return {
    id: uuid(),
    characteristic: line.characteristic,
    side: line.side ?? "whole",
    alternatives,
    applicability: line.applicability ?? {},
    source,
    ...(nominal === undefined ? {} : { nominal }),
    ...(limits === undefined ? {} : { limits }),
    ...(line.note === undefined ? {} : { note: line.note }),
  };
}

/** Reads the lines and refuses a specification that contradicts itself, telling everything that is wrong. */
function entriesOf(input: AddSpecificationInput): readonly SpecificationEntry[] {
  const problems = new Problems();
  const entries = input.lines.map((line) => entryOf(line, input, problems));
  const contradictions = checkSpecification({ entries }, input.book);
  const all = [...problems.found, ...contradictions.map(({ message }) => message)];
  if (all.length > 0) throw refused("SPECIFICATION_CONTRADICTS", { problems: all.slice(0, 50) });
  return entries;
}

function entryColumns(
  entry: SpecificationEntry,
  specificationId: string,
  sourceId: string,
): Prisma.SpecificationEntryCreateManyInput {
  const { serialFrom, serialTo, builtFrom, builtTo, option } = entry.applicability;
  return {
    id: entry.id,
    specificationId,
    sourceId,
    characteristic: entry.characteristic,
    side: entry.side,
    ...(entry.nominal === undefined ? {} : prefixedValueColumns("nominal", entry.nominal)),
    lower: entry.limits?.lower ?? null,
    upper: entry.limits?.upper ?? null,
    serialFrom: serialFrom ?? null,
    serialTo: serialTo ?? null,
    builtFrom: builtFrom === undefined ? null : dayColumn(builtFrom),
    builtTo: builtTo === undefined ? null : dayColumn(builtTo),
    option: option ?? null,
    locus: entry.source.locus ?? null,
    trust: entry.source.trust,
    note: entry.note ?? null,
  };
}

async function sourceFor(ctx: Context, { title, kind, edition }: SourceInput): Promise<string> {
  const found = await ctx.db.source.upsert({
    where: { clubId_title: { clubId: ctx.club.id, title } },
    create: { title, kind, edition: edition ?? null },
    update: {},
  });
  return found.id;
}

/**
 * Adds the next version of a series' specification and makes it the current one. The caller rebuilds current values.
 *
 * @throws Refusal ROLE_NEEDED; SPECIFICATION_CONTRADICTS with every line that is wrong, and then nothing is written
 */
export async function addSpecification(ctx: Context, input: AddSpecificationInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const entries = entriesOf(input);
  const { seriesId } = input;
  const latest = await ctx.db.specification.findFirst({ where: { seriesId }, orderBy: { version: "desc" } });
  await ctx.db.specification.updateMany({
    where: { seriesId, status: "current" },
    data: { status: "superseded" },
  });
  const id = uuid();
  const version = (latest?.version ?? 0) + 1;
  const sourceId = await sourceFor(ctx, input.source);
  const note = input.note ?? null;
  const madeById = ctx.actor.personId;
  await ctx.db.specification.create({ data: { id, seriesId, version, status: "current", note, madeById } });
  await ctx.db.specificationEntry.createMany({
    data: entries.map((entry) => entryColumns(entry, id, sourceId)),
  });
  await ctx.db.specificationAlternative.createMany({
    data: entries.flatMap((entry) =>
      entry.alternatives.map(({ role, value, note: said, source }) => ({
        entryId: entry.id,
        role,
        sourceId,
        trust: source.trust,
        note: said ?? null,
        ...valueColumns(value),
      })),
    ),
  });
  const after = { seriesId, version, entries: entries.length };
  await writeJournal(ctx, [{ action: "specification.add", noun: "specification", nounId: id, after }]);
  return id;
}
