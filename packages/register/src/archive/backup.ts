import { z } from "zod";
import type { Kind } from "./kind";
import { credentialKind, personKind } from "./kind/person";
import { archiveMember } from "./manifest";

/** What a backup of a whole installation says it is. */
export const BACKUP_FORMAT = "trunnion-backup";
/** Raised when an older program could not read the backup any more. */
export const BACKUP_VERSION = 1;
export const BACKUP_PATH = "backup.json";

/** Kinds of row that a backup has beside its clubs' archives, in the order they are read back. */
export const backupKinds: readonly Kind[] = [personKind, credentialKind];

/** `backup.json`: the clubs, whose archives lie in folders of their names, and the files of people. */
export const backupManifest = z.strictObject({
  format: z.literal(BACKUP_FORMAT),
  formatVersion: z.int().min(1).max(BACKUP_VERSION),
  clubs: z.array(z.strictObject({ slug: z.string(), manifestSha256: archiveMember.shape.sha256 })),
  members: z.array(archiveMember),
});
export type BackupManifest = z.infer<typeof backupManifest>;

/** The plain text that goes with a backup. */
export function backupReadme(clubs: readonly string[]): string {
  return [
    "A backup of a whole Trunnion installation",
    "",
    "Keep it as you keep a key: it holds names and addresses of people, and the",
    "salted hashes of their passwords.",
    "",
    "It is read back into an empty database by:  trunnion restore <this file>",
    "",
    "backup.json             the clubs, and size and SHA-256 of the files beside it",
    "rows/person.jsonl       who can sign in",
    "rows/credential.jsonl   hashes of passwords",
    ...clubs.map((slug) => `clubs/${slug}/`.padEnd(24).concat("a club's archive: read README.txt in it")),
    "",
    "Nobody stays signed in, and links of invitation end: they are not in it.",
    "",
  ].join("\n");
}
