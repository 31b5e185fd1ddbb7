import type { ClubTables } from "@trunnion/db";
import { openClub } from "@trunnion/db/gate";
import {
  BACKUP_FORMAT,
  BACKUP_PATH,
  BACKUP_VERSION,
  type BackupManifest,
  backupKinds,
  backupManifest,
  MANIFEST_PATH,
  README_PATH,
  refused,
} from "@trunnion/register";
import type { RestoreInput, RestoreReport } from "../archive";
import { rowsPath } from "../archive/policy";
import { archiveWithin, namingLine, readManifest, restoreWithin, rowsOf } from "../archive/read";
import { type OpenArchive, openArchiveFile, provenContent } from "../archive-file";
import { columnTypes, RowWriter } from "../archive-row";
import { rebuildClub } from "../current-value";

const TIMEOUT = 24 * 3_600_000;
const NOBODY = "00000000-0000-0000-0000-000000000000";

export type RestoreBackupInput = Omit<RestoreInput, "as">;

/** What was read back of a backup. */
export interface BackupReport {
  readonly people: number;
  readonly credentials: number;
  readonly clubs: readonly RestoreReport[];
  readonly dryRun: boolean;
}

/**
 * Whether a file is a backup of an installation or one club's archive, by what is in it.
 *
 * @throws Refusal FILE_NOT_FOUND, ARCHIVE_UNREADABLE, ARCHIVE_NAME, ARCHIVE_LIMIT
 */
export async function kindOfFile(path: string): Promise<"backup" | "archive"> {
  const archive = await openArchiveFile(path);
  archive.close();
  return archive.members.has(BACKUP_PATH) ? "backup" : "archive";
}

async function readBackup(archive: OpenArchive): Promise<BackupManifest> {
  const as = { schema: backupManifest, format: BACKUP_FORMAT, version: BACKUP_VERSION };
  const manifest = await readManifest(archive, BACKUP_PATH, as);
  const named = new Set(manifest.members.map(({ path }) => path));
  const needed = [README_PATH, ...backupKinds.map(({ name }) => rowsPath(name))];
  const folders = manifest.clubs.map(({ slug }) => `clubs/${slug}/`);
  const inClub = (path: string) => folders.some((folder) => path.startsWith(folder));
  const missing = [
    ...needed.filter((path) => !named.has(path) || !archive.members.has(path)),
    ...folders.map((folder) => `${folder}${MANIFEST_PATH}`).filter((path) => !archive.members.has(path)),
  ];
  const there = [...archive.members.keys()].filter((path) => path !== BACKUP_PATH && !inClub(path));
  const extra = [...there, ...named].filter((path) => !needed.includes(path));
  if (missing.length + extra.length === 0) return manifest;
  throw refused("ARCHIVE_MEMBERS", { file: archive.file, missing, extra });
}

async function requireEmpty(tables: ClubTables): Promise<void> {
  const clubs = await tables.club.findMany({ select: { slug: true }, orderBy: { slug: "asc" } });
  const [count] = await tables.$queryRaw<{ people: number }[]>`SELECT count(*)::int AS people FROM person`;
  const people = count?.people ?? 0;
  if (clubs.length + people === 0) return;
  throw refused("BACKUP_NEEDS_EMPTY", { clubs: clubs.map(({ slug }) => slug), people });
}

interface RestoringBackup {
  readonly tables: ClubTables;
  readonly archive: OpenArchive;
  readonly manifest: BackupManifest;
  readonly input: RestoreBackupInput;
}

async function restorePeople({ tables, archive, manifest }: RestoringBackup): Promise<readonly number[]> {
  const types = await columnTypes(tables);
  const files = { archive, prefix: "", manifest };
  const counts: number[] = [];
  for (const kind of backupKinds) {
    const writer = RowWriter.of(tables, kind, types);
    let rows = 0;
    await namingLine(files, kind, async () => {
      for await (const batch of rowsOf(files, kind)) {
        await writer.write(batch);
        rows += batch.length;
      }
    });
    counts.push(rows);
  }
  return counts;
}

async function restoreClubs({ tables, archive, manifest, input }: RestoringBackup): Promise<RestoreReport[]> {
  const reports: RestoreReport[] = [];
  for (const { slug, manifestSha256 } of manifest.clubs) {
    const prefix = `clubs/${slug}/`;
    for await (const _ of provenContent(archive, {
      path: `${prefix}${MANIFEST_PATH}`,
      sha256: manifestSha256,
    }));
    const within = await archiveWithin(archive, prefix);
    await tables.$queryRaw`SELECT set_config('trunnion.club', ${within.manifest.club.id}, true)`;
    reports.push(await restoreWithin({ tables, within, input }));
  }
  return reports;
}

async function restoreAll(restoring: RestoringBackup): Promise<BackupReport> {
  await requireEmpty(restoring.tables);
  const readme = restoring.manifest.members.find(({ path }) => path === README_PATH);
  if (readme) for await (const _ of provenContent(restoring.archive, readme));
  const [people = 0, credentials = 0] = await restorePeople(restoring);
  return { people, credentials, clubs: await restoreClubs(restoring), dryRun: restoring.input.dryRun };
}

/** Thrown to take a trial back, carrying what it found. */
class Trial extends Error {
  constructor(readonly report: BackupReport) {
    super("a trial, taken back");
  }
}

/**
 * Reads a backup back into an empty database: people, their credentials, every club, in one transaction, all or nothing.
 *
 * @throws Refusal BACKUP_NEEDS_EMPTY, FILE_NOT_FOUND and the ARCHIVE_… ones, naming file and line
 */
export async function restoreBackup(input: RestoreBackupInput): Promise<BackupReport> {
  const archive = await openArchiveFile(input.path);
  try {
    const manifest = await readBackup(archive);
    const report = await openClub(
      input.owner,
      NOBODY,
      async (tables) => {
        const done = await restoreAll({ tables, archive, manifest, input });
        if (input.dryRun) throw new Trial(done);
        return done;
      },
      TIMEOUT,
    );
    for (const { club } of report.clubs) await rebuildClub(input.database, club.slug);
    return report;
  } catch (error) {
    if (error instanceof Trial) return error.report;
    throw error;
  } finally {
    archive.close();
  }
}
