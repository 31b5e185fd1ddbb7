import type { ClubTables, Database } from "@trunnion/db";
import { openClub } from "@trunnion/db/gate";
import {
  ARCHIVE_FORMAT,
  ARCHIVE_VERSION,
  type ArchiveManifest,
  archiveKinds,
  archiveManifest,
  type Kind,
  MANIFEST_PATH,
  manifestHead,
  refused,
} from "@trunnion/register";
import type { z } from "zod";
import { linesOf, type OpenArchive, openArchiveFile, provenContent, wholeText } from "../archive-file";
import { type ArchiveLine, columnTypes, RowRefused, RowWriter } from "../archive-row";
import { rebuildClub } from "../current-value";
import { Members } from "./member";
import { type EvidenceFiles, evidenceHash, needed, rowsPath } from "./policy";

/** Longest time that reading an archive back may take, milliseconds. */
const TIMEOUT = 12 * 3_600_000;
/** Rows written at once, and the most bytes of them. */
const ROWS = 1_000;
const BYTES = 4e6;

export interface RestoreInput {
  /** The archive's file. */
  readonly path: string;
  /** Connections as the role that owns the tables: it alone may make a club, and read a journal back. */
  readonly owner: Database;
  /** Connections as the service's role. */
  readonly database: Database;
  readonly evidence: EvidenceFiles;
  /** Another short name for the club. */
  readonly as?: string;
  /** Read and prove everything, keep nothing. */
  readonly dryRun: boolean;
}

/** What was read back. */
export interface RestoreReport {
  readonly club: { readonly id: string; readonly slug: string; readonly name: string };
  readonly personalData: boolean;
  /** Rows by kind. */
  readonly rows: Readonly<Record<string, number>>;
  readonly evidenceFiles: number;
  readonly missingEvidence: readonly string[];
  readonly people: { readonly made: number; readonly known: number };
  readonly dryRun: boolean;
}

/** One club's archive within a file; a backup has several, each under its prefix. */
export interface ArchiveWithin {
  readonly archive: OpenArchive;
  readonly prefix: string;
  readonly manifest: ArchiveManifest;
}

/** What a file that is none of ours is, in words. */
function formatOf({ format, formatVersion }: z.infer<typeof manifestHead>, wanted: string): string {
  return format === wanted ? `${wanted} of version ${formatVersion}` : `"${format}"`;
}

/**
 * Reads a JSON file that says what the archive is.
 *
 * @throws Refusal ARCHIVE_FORMAT for another kind of file, and for one of a later version
 */
export async function readManifest<T>(
  archive: OpenArchive,
  path: string,
  as: { readonly schema: z.ZodType<T>; readonly format: string; readonly version: number },
): Promise<T> {
  const { file } = archive;
  const wanted = `${as.format} up to version ${as.version}`;
  const no = (found: string) => refused("ARCHIVE_FORMAT", { file, found, wanted });
  if (!archive.members.has(path)) throw no(`a ZIP file without ${path}`);
  let said: unknown;
  try {
    said = JSON.parse(await wholeText(archive, path));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    throw no(`a ZIP file whose ${path} is not JSON (${error.message})`);
  }
  const head = manifestHead.safeParse(said);
  if (!head.success) throw no(`a ZIP file whose ${path} does not say what it is`);
  const { format, formatVersion } = head.data;
  if (format !== as.format || formatVersion > as.version) throw no(formatOf(head.data, as.format));
  const read = as.schema.safeParse(said);
  if (read.success) return read.data;
  throw no(`an archive whose ${path} cannot be read: ${problemOf(read.error)}`);
}

function problemOf(error: z.ZodError): string {
  const [issue] = error.issues;
  if (!issue) return "it is not what the schema says";
  return issue.path.length === 0 ? issue.message : `${issue.path.join(".")}: ${issue.message}`;
}

/** Finds the club's archive under a prefix of a file, and proves that exactly the files it names are there. */
export async function archiveWithin(archive: OpenArchive, prefix: string): Promise<ArchiveWithin> {
  const manifest = await readManifest(archive, `${prefix}${MANIFEST_PATH}`, {
    schema: archiveManifest,
    format: ARCHIVE_FORMAT,
    version: ARCHIVE_VERSION,
  });
  const named = new Set(manifest.members.map(({ path }) => path));
  const there = new Set(
    [...archive.members.keys()].flatMap((name) =>
      name.startsWith(prefix) ? [name.slice(prefix.length)] : [],
    ),
  );
  there.delete(MANIFEST_PATH);
  const allowed = (path: string) => needed.includes(path) || evidenceHash(path) !== undefined;
  const missing = [...new Set([...named, ...needed])].filter((path) => !there.has(path) || !named.has(path));
  const extra = [...there, ...named].filter(
    (path) => !missing.includes(path) && (!named.has(path) || !allowed(path)),
  );
  if (missing.length + extra.length > 0 || named.size < manifest.members.length) {
    throw refused("ARCHIVE_MEMBERS", { file: archive.file, missing, extra });
  }
  return { archive, prefix, manifest };
}

const asRow = (kind: Kind, place: { readonly file: string; readonly member: string }) => {
  return (text: string, line: number): ArchiveLine => {
    const no = (problem: string) => refused("ARCHIVE_LINE", { ...place, line, problem });
    let said: unknown;
    try {
      said = JSON.parse(text);
    } catch (error) {
      throw no(`it is not JSON (${(error as Error).message})`);
    }
    const read = kind.row.safeParse(said);
    if (!read.success) throw no(problemOf(read.error));
    return { number: line, text, row: read.data };
  };
};

/** Files of rows under a prefix of an archive, and what is said of them. */
export interface RowFiles {
  readonly archive: OpenArchive;
  readonly prefix: string;
  readonly manifest: Pick<ArchiveManifest, "members">;
}

/** The lines of a file of rows, proved and read, some at a time. */
export async function* rowsOf(
  { archive, prefix, manifest }: RowFiles,
  kind: Kind,
): AsyncGenerator<ArchiveLine[]> {
  const stated = manifest.members.find(({ path }) => path === rowsPath(kind.name));
  if (!stated) throw new Error(`no file of rows for ${kind.name}`);
  const member = `${prefix}${stated.path}`;
  const place = { file: archive.file, member };
  const read = asRow(kind, place);
  let batch: ArchiveLine[] = [];
  let bytes = 0;
  let count = 0;
  for await (const { number, lines } of linesOf(provenContent(archive, { ...stated, path: member }), place)) {
    for (const [index, text] of lines.entries()) {
      batch.push(read(text, number + index));
      bytes += text.length;
      if (batch.length < ROWS && bytes < BYTES) continue;
      yield batch;
      batch = [];
      bytes = 0;
    }
    count += lines.length;
  }
  if (batch.length > 0) yield batch;
  if (count !== stated.rows) {
    const problem = `the manifest says there are ${stated.rows} lines`;
    throw refused("ARCHIVE_LINE", { ...place, line: count, problem });
  }
}

/** A restoring under way in the owner's transaction. */
export interface Restoring {
  readonly tables: ClubTables;
  readonly within: ArchiveWithin;
  readonly input: Pick<RestoreInput, "as" | "dryRun" | "evidence">;
}

/** The club's own line, under another short name where one was asked for. */
function renamed(line: ArchiveLine, { within, input }: Restoring): ArchiveLine {
  const { archive, manifest } = within;
  if (line.number > 1 || line.row.id !== manifest.club.id) {
    const problem = `the archive is of one club, ${manifest.club.id}`;
    throw refused("ARCHIVE_LINE", {
      file: archive.file,
      member: rowsPath("club"),
      line: line.number,
      problem,
    });
  }
  if (input.as === undefined) return line;
  const row = { ...line.row, slug: input.as };
  return { number: line.number, row, text: JSON.stringify(row) };
}

async function restoreKind(
  restoring: Restoring,
  kind: Kind,
  writer: RowWriter,
  members: Members,
): Promise<number> {
  let rows = 0;
  for await (const batch of rowsOf(restoring.within, kind)) {
    if (kind.name === "member") await members.settle(batch);
    const lines =
      kind.name === "club" ? batch.map((line) => renamed(line, restoring)) : members.pointed(kind, batch);
    await writer.write(lines);
    rows += batch.length;
  }
  await writer.finish();
  return rows;
}

/** Does some work with the rows of a kind; one that the database turned away is refused by file and line. */
export async function namingLine<T>(
  { archive, prefix }: RowFiles,
  kind: Kind,
  work: () => Promise<T>,
): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof RowRefused)) throw error;
    const place = { file: archive.file, member: `${prefix}${rowsPath(kind.name)}` };
    throw refused("ARCHIVE_LINE", { ...place, line: error.line, problem: error.breach });
  }
}

async function restoreRows(restoring: Restoring, members: Members): Promise<Record<string, number>> {
  const { tables, within } = restoring;
  const types = await columnTypes(tables);
  const rows: Record<string, number> = {};
  for (const kind of archiveKinds) {
    rows[kind.name] = await namingLine(within, kind, () =>
      restoreKind(restoring, kind, RowWriter.of(tables, kind, types), members),
    );
  }
  return rows;
}

/** Proves every other file, and keeps those that are evidence: last of all, when all rows are known to be right. */
async function restoreFiles({ within, input }: Restoring): Promise<number> {
  const { archive, prefix, manifest } = within;
  let kept = 0;
  for (const { path, sha256 } of manifest.members) {
    if (path.startsWith("rows/")) continue;
    const content = provenContent(archive, { path: `${prefix}${path}`, sha256 });
    const evidence = evidenceHash(path);
    if (evidence !== undefined && evidence !== sha256) {
      throw refused("ARCHIVE_HASH", { file: archive.file, member: path, stated: evidence, found: sha256 });
    }
    if (evidence !== undefined) kept++;
    if (evidence === undefined || input.dryRun) for await (const _ of content);
    else await input.evidence.keep(manifest.club.id, evidence, content);
  }
  return kept;
}

async function requireNewClub({ tables, within, input }: Restoring): Promise<string> {
  const { club } = within.manifest;
  const slug = input.as ?? club.slug;
  if (!/^[a-z0-9][a-z0-9-]{0,59}$/.test(slug)) throw refused("ARCHIVE_SLUG", { slug });
  const known = await tables.club.findFirst({ where: { OR: [{ id: club.id }, { slug }] } });
  if (known?.id === club.id) throw refused("ARCHIVE_CLUB_KNOWN", { club: known.name, slug: known.slug });
  if (known) throw refused("ARCHIVE_SLUG_TAKEN", { slug });
  return slug;
}

/**
 * Reads one club's archive back in the owner's transaction of that club: rows in the order of what they refer to, each
 * against its schema and the database's own keys; the journal entry by entry, each hash proved by the database.
 */
export async function restoreWithin(restoring: Restoring): Promise<RestoreReport> {
  const { within, input } = restoring;
  const { club, personalData, missingEvidence } = within.manifest;
  const slug = await requireNewClub(restoring);
  const members = new Members(restoring.tables);
  const rows = await restoreRows(restoring, members);
  const evidenceFiles = await restoreFiles(restoring);
  const { made, known } = members;
  const people = { made, known };
  return {
    club: { ...club, slug },
    personalData,
    rows,
    evidenceFiles,
    missingEvidence,
    people,
    dryRun: input.dryRun,
  };
}

/** Thrown to take a trial back, carrying what it found. */
class Trial extends Error {
  constructor(readonly report: RestoreReport) {
    super("a trial, taken back");
  }
}

/**
 * Reads the records of a club's archive back, as `restoreArchive` does; what follows from them is not worked out yet.
 *
 * @throws Refusal as `restoreArchive`
 */
export async function restoreRecords(input: Omit<RestoreInput, "database">): Promise<RestoreReport> {
  const archive = await openArchiveFile(input.path);
  try {
    const within = await archiveWithin(archive, "");
    const work = async (tables: ClubTables) => {
      const done = await restoreWithin({ tables, within, input });
      if (input.dryRun) throw new Trial(done);
      return done;
    };
    return await openClub(input.owner, within.manifest.club.id, work, TIMEOUT);
  } catch (error) {
    if (error instanceof Trial) return error.report;
    throw error;
  } finally {
    archive.close();
  }
}

/**
 * Reads a club's archive back into a database that does not have the club. All of it goes in, in one transaction, or none;
 * evidence files are kept last. Then what follows from the records is worked out.
 *
 * Members come back as people without a password: their names stay with what they did, and a registrar invites them. Where
 * an address has an account here, the membership goes to that. Without personal data they have a made-up address.
 *
 * @throws Refusal FILE_NOT_FOUND and the ARCHIVE_… ones, naming file and line
 */
export async function restoreArchive(input: RestoreInput): Promise<RestoreReport> {
  const report = await restoreRecords(input);
  if (!report.dryRun) await rebuildClub(input.database, report.club.slug);
  return report;
}
