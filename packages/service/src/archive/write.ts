import { createHash } from "node:crypto";
import { open } from "node:fs/promises";
import { join } from "node:path";
import { Readable, type Writable } from "node:stream";
import type { ClubTables, Database } from "@trunnion/db";
import { openClubSnapshot } from "@trunnion/db/gate";
import {
  ARCHIVE_FORMAT,
  ARCHIVE_VERSION,
  type ArchiveManifest,
  type ArchiveMember,
  archiveKinds,
  archiveReadme,
  type Kind,
  MANIFEST_PATH,
  manifestJsonSchema,
  README_PATH,
  refused,
  rowJsonSchema,
} from "@trunnion/register";
import { type FileToPack, fromDisk, fromText, packFiles } from "../archive-file";
import { archiveLines, columnTypes, tableOf, unmatched } from "../archive-row";
import { openAside } from "../aside-folder";
import type { ClubFacts, Context } from "../context";
import {
  type EvidenceFiles,
  evidencePath,
  MANIFEST_SCHEMA_PATH,
  requireMayArchive,
  rowsPath,
  schemaPath,
} from "./policy";

export interface ArchiveInput {
  readonly database: Database;
  readonly personalData: boolean;
  readonly evidence: EvidenceFiles;
}

/** A club's archive, ready to be written out: the club may change meanwhile, the archive does not. */
export interface PreparedArchive {
  readonly manifest: ArchiveManifest;
  /** The archive's files in their order, for a larger one to take in. */
  readonly files: readonly FileToPack[];
  /** Writes it out as a ZIP file, as fast as whoever reads it. */
  pour(output: Writable): Promise<void>;
  /** Deletes what was put aside for it; to be called in any case. */
  discard(): Promise<void>;
}

/** SHA-256 of some bytes, hexadecimal. */
export const sha256Of = (bytes: Buffer) => createHash("sha256").update(bytes).digest("hex");
/** A document of an archive that people may read too. */
export const pretty = (value: unknown) => `${JSON.stringify(value, null, 2)}\n`;

/** A file of an archive with what the manifest says of it. */
export interface Part {
  readonly member: ArchiveMember;
  readonly file: FileToPack;
}

/** A text that is made whole, as a file of an archive. */
export function textPart(path: string, text: string): Part {
  const bytes = Buffer.from(text, "utf8");
  return { member: { path, bytes: bytes.length, sha256: sha256Of(bytes) }, file: fromText(path, text) };
}

/** Puts a kind's rows aside in a file of its own, and notes how many and what hash they have. */
export async function rowsPart(
  tables: ClubTables,
  kind: Kind,
  { personalData, folder }: { readonly personalData: boolean; readonly folder: string },
): Promise<Part> {
  const path = rowsPath(kind.name);
  const place = join(folder, `${tableOf(kind)}.jsonl`);
  const hash = createHash("sha256");
  let rows = 0;
  let bytes = 0;
  const handle = await open(place, "wx", 0o600);
  try {
    for await (const lines of archiveLines(tables, kind, personalData)) {
      const block = Buffer.from(`${lines.join("\n")}\n`, "utf8");
      hash.update(block);
      await handle.writeFile(block);
      rows += lines.length;
      bytes += block.length;
    }
  } finally {
    await handle.close();
  }
  return { member: { path, bytes, sha256: hash.digest("hex"), rows }, file: fromDisk(path, place) };
}

/** Gives a file's content on, and proves at its end that it is what it was when it was taken in. */
async function* proven(content: Readable, sha256: string): AsyncGenerator<Buffer> {
  const hash = createHash("sha256");
  for await (const chunk of content as AsyncIterable<Buffer>) {
    hash.update(chunk);
    yield chunk;
  }
  if (hash.digest("hex") !== sha256) throw refused("ARCHIVE_EVIDENCE_DAMAGED", { sha256 });
}

interface EvidenceRow {
  readonly sha256: string;
  readonly mediaType: string;
  readonly bytes: number;
}

async function evidencePart(
  clubId: string,
  row: EvidenceRow,
  files: EvidenceFiles,
): Promise<Part | undefined> {
  const { sha256, mediaType, bytes } = row;
  if (!(await files.has(clubId, sha256))) return undefined;
  const path = evidencePath(sha256, mediaType);
  const open = async () => {
    const content = await files.open(clubId, sha256);
    if (!content) throw refused("ARCHIVE_EVIDENCE_DAMAGED", { sha256 });
    return Readable.from(proven(content, sha256));
  };
  return { member: { path, bytes, sha256 }, file: { path, open, stored: true } };
}

interface Gathered {
  readonly rows: readonly Part[];
  readonly evidence: readonly EvidenceRow[];
  readonly journal: ArchiveManifest["journal"];
}

async function gather(tables: ClubTables, personalData: boolean, folder: string): Promise<Gathered> {
  const types = await columnTypes(tables);
  const lost = archiveKinds.flatMap((kind) => unmatched(kind, types.get(tableOf(kind))));
  if (lost.length > 0) throw new Error(`the archive does not know of ${lost.join(", ")}`);
  const rows: Part[] = [];
  for (const kind of archiveKinds) rows.push(await rowsPart(tables, kind, { personalData, folder }));
  const last = await tables.journalEntry.findFirst({ orderBy: { sequence: "desc" } });
  return {
    rows,
    evidence: await tables.evidence.findMany({
      select: { sha256: true, mediaType: true, bytes: true },
      orderBy: { sha256: "asc" },
    }),
    journal: { entries: Number(last?.sequence ?? 0), lastHash: last?.hash ?? "" },
  };
}

interface Assembly {
  readonly club: ClubFacts;
  readonly input: ArchiveInput;
  readonly gathered: Gathered;
}

/** The manifest and all files in their order, the manifest after the README. */
async function assemble({
  club,
  input,
  gathered,
}: Assembly): Promise<Pick<PreparedArchive, "manifest" | "files">> {
  const readme = textPart(README_PATH, archiveReadme(club.name, archiveKinds, input.personalData));
  const schemas = [
    textPart(MANIFEST_SCHEMA_PATH, pretty(manifestJsonSchema())),
    ...archiveKinds.map((kind) => textPart(schemaPath(kind.name), pretty(rowJsonSchema(kind)))),
  ];
  const evidence: Part[] = [];
  const missingEvidence: string[] = [];
  for (const row of gathered.evidence) {
    const part = await evidencePart(club.id, row, input.evidence);
    if (part) evidence.push(part);
    else missingEvidence.push(row.sha256);
  }
  const parts = [readme, ...schemas, ...gathered.rows, ...evidence];
  const manifest: ArchiveManifest = {
    format: ARCHIVE_FORMAT,
    formatVersion: ARCHIVE_VERSION,
    club: { id: club.id, slug: club.slug, name: club.name },
    personalData: input.personalData,
    journal: gathered.journal,
    missingEvidence,
    members: parts.map(({ member }) => member),
  };
  const [first, ...others] = parts.map(({ file }) => file);
  const files = [...(first ? [first] : []), fromText(MANIFEST_PATH, pretty(manifest)), ...others];
  return { manifest, files };
}

/**
 * Prepares a club's archive: in one snapshot every row is put aside in a private temporary folder (which needs about the
 * room that the rows take unpacked), so that writing the archive out afterwards, however slow, holds nothing up.
 *
 * @param ctx a context of the club, open or ended: who acts, and which club; its own transaction is not used
 * @throws Refusal ROLE_NEEDED; when poured, ARCHIVE_EVIDENCE_DAMAGED
 */
export async function prepareArchive(ctx: Context, input: ArchiveInput): Promise<PreparedArchive> {
  requireMayArchive(ctx);
  const { club } = ctx;
  const { path: folder, discard } = await openAside();
  try {
    const gathered = await openClubSnapshot(input.database, club.id, (tables) =>
      gather(tables, input.personalData, folder),
    );
    const { manifest, files } = await assemble({ club, input, gathered });
    return { manifest, files, pour: (output) => packFiles(files, output), discard };
  } catch (error) {
    await discard();
    throw error;
  }
}
