import type { Writable } from "node:stream";
import type { Database } from "@trunnion/db";
import { openClubSnapshot } from "@trunnion/db/gate";
import {
  BACKUP_FORMAT,
  BACKUP_PATH,
  BACKUP_VERSION,
  type BackupManifest,
  backupKinds,
  backupReadme,
  README_PATH,
} from "@trunnion/register";
import { type EvidenceFiles, type PreparedArchive, prepareArchive } from "../archive";
import { type Part, pretty, rowsPart, sha256Of, textPart } from "../archive/write";
import { type FileToPack, packFiles } from "../archive-file";
import { openAside } from "../aside-folder";
import { listClubs } from "../club";
import { openOperator } from "../gate";

export interface BackupInput {
  readonly database: Database;
  readonly evidence: EvidenceFiles;
}

/** A backup, ready to be written out. */
export interface PreparedBackup {
  readonly manifest: BackupManifest;
  /** Rows in it, all clubs together and people. */
  readonly rows: number;
  /** Evidence whose file was not there, by club. */
  readonly missingEvidence: Readonly<Record<string, readonly string[]>>;
  pour(output: Writable): Promise<void>;
  /** Deletes what was put aside for it; to be called in any case. */
  discard(): Promise<void>;
}

/** No club: people stand outside the clubs, and no club's row is seen. */
const NOBODY = "00000000-0000-0000-0000-000000000000";

const under = (folder: string, files: readonly FileToPack[]): readonly FileToPack[] =>
  files.map((file) => ({ ...file, path: `${folder}${file.path}` }));

const rowsIn = (members: readonly { readonly rows?: number | undefined }[]) =>
  members.reduce((sum, { rows = 0 }) => sum + rows, 0);

function manifestOf(clubs: ReadonlyMap<string, PreparedArchive>, parts: readonly Part[]): BackupManifest {
  return {
    format: BACKUP_FORMAT,
    formatVersion: BACKUP_VERSION,
    clubs: [...clubs].map(([slug, { manifest }]) => ({
      slug,
      manifestSha256: sha256Of(Buffer.from(pretty(manifest))),
    })),
    members: parts.map(({ member }) => member),
  };
}

/** People last: every member of a club that was read before is among them. */
async function peopleParts(database: Database, folder: string): Promise<readonly Part[]> {
  return openClubSnapshot(database, NOBODY, async (tables) => {
    const parts: Part[] = [];
    for (const kind of backupKinds) parts.push(await rowsPart(tables, kind, { personalData: true, folder }));
    return parts;
  });
}

/**
 * Prepares a backup of the whole installation: every club's archive with personal data, and the people with the hashes of
 * their passwords. For whoever holds the machine. Sessions and invitations stay out.
 */
export async function prepareBackup({ database, evidence }: BackupInput): Promise<PreparedBackup> {
  const aside = await openAside();
  const clubs = new Map<string, PreparedArchive>();
  const discard = async () => {
    for (const club of clubs.values()) await club.discard();
    await aside.discard();
  };
  try {
    for (const slug of await listClubs(database)) {
      const input = { database, personalData: true, evidence };
      const ctx = await openOperator(database, slug, async (opened) => opened);
      clubs.set(slug, await prepareArchive(ctx, input));
    }
    const people = await peopleParts(database, aside.path);
    const parts = [textPart(README_PATH, backupReadme([...clubs.keys()])), ...people];
    const manifest = manifestOf(clubs, parts);
    const files = [
      ...[...parts, textPart(BACKUP_PATH, pretty(manifest))].map(({ file }) => file),
      ...[...clubs].flatMap(([slug, club]) => under(`clubs/${slug}/`, club.files)),
    ];
    const archives = [...clubs].map(([slug, club]) => [slug, club.manifest] as const);
    return {
      manifest,
      rows: rowsIn(manifest.members) + archives.reduce((sum, [, { members }]) => sum + rowsIn(members), 0),
      missingEvidence: Object.fromEntries(archives.map(([slug, one]) => [slug, one.missingEvidence])),
      pour: (output) => packFiles(files, output),
      discard,
    };
  } catch (error) {
    await discard();
    throw error;
  }
}
