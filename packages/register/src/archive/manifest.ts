import { z } from "zod";

/** What a club's archive says it is. */
export const ARCHIVE_FORMAT = "trunnion-club-archive";
/** Raised when an older program could not read the archive any more. */
export const ARCHIVE_VERSION = 1;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/, "a SHA-256 in lower-case hexadecimal");
const count = z.int().min(0);

/** One file of the archive, apart from the manifest itself. */
export const archiveMember = z.strictObject({
  path: z.string().min(1).max(200).describe("Name within the archive, with slashes."),
  bytes: count.describe("Size as read, bytes."),
  sha256: sha256.describe("SHA-256 of the content, hexadecimal."),
  rows: count.exactOptional().describe("Lines, of a file of rows."),
});
export type ArchiveMember = z.infer<typeof archiveMember>;

/** `manifest.json` of a club's archive. */
export const archiveManifest = z.strictObject({
  format: z.literal(ARCHIVE_FORMAT).describe("What this file is."),
  formatVersion: z.int().min(1).max(ARCHIVE_VERSION).describe("Version of the format, from 1."),
  club: z
    .strictObject({ id: z.string(), slug: z.string(), name: z.string() })
    .describe("Whose archive it is."),
  personalData: z.boolean().describe("Whether names, addresses and the like of people are in it."),
  journal: z
    .strictObject({ entries: count, lastHash: z.union([sha256, z.literal("")]) })
    .describe("How far the journal goes, and the hash of its last entry; empty while there is none."),
  missingEvidence: z.array(sha256).describe("Evidence whose file was not there when the archive was made."),
  members: z.array(archiveMember).describe("Every other file of the archive, in the order they stand in it."),
});
export type ArchiveManifest = z.infer<typeof archiveManifest>;

/** Enough of a manifest to tell what kind of file it is and of what version, whatever else it says. */
export const manifestHead = z.object({ format: z.string(), formatVersion: z.number() });

export const README_PATH = "README.txt";
export const MANIFEST_PATH = "manifest.json";
