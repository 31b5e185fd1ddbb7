import type { Readable } from "node:stream";
import type { Role } from "@trunnion/db";
import { archiveKinds, kindFile } from "@trunnion/register";
import type { Context } from "../context";
import { requireRole } from "../role";

/** Who may take the whole club away as an archive, with or without personal data. */
export const archivists: readonly Role[] = ["registrar", "fleetManager"];

/** @throws Refusal ROLE_NEEDED */
export function requireMayArchive({ actor }: Context): void {
  requireRole(actor, ...archivists);
}

/** True for who may take the whole club away as an archive. */
export const mayArchive = ({ actor }: Context): boolean =>
  archivists.some((role) => actor.roles.includes(role));

/** Where the files of a club's evidence are kept, by the SHA-256 (hex) of their content. */
export interface EvidenceFiles {
  has(clubId: string, sha256: string): Promise<boolean>;
  /** The content; nothing when the file is not there. */
  open(clubId: string, sha256: string): Promise<Readable | undefined>;
  /** Keeps a content whose hash was found to be right when it ends; one that throws on the way is not kept. */
  keep(clubId: string, sha256: string, content: AsyncIterable<Buffer>): Promise<void>;
}

const endings: Readonly<Record<string, string>> = {
  "application/pdf": "pdf",
  "image/avif": "avif",
  "image/gif": "gif",
  "image/heic": "heic",
  "image/heif": "heif",
  "image/jpeg": "jpg",
  "image/png": "png",
  "image/tiff": "tiff",
  "image/webp": "webp",
  "text/csv": "csv",
  "text/plain": "txt",
};

/** Name of a piece of evidence in the archive: with an ending, so that a successor's computer knows what to do with it. */
export function evidencePath(sha256: string, mediaType: string): string {
  return `evidence/${sha256}.${endings[mediaType] ?? "bin"}`;
}

/** The hash in the name of a piece of evidence; nothing for other files of the archive. */
export function evidenceHash(path: string): string | undefined {
  return /^evidence\/([0-9a-f]{64})\.[a-z]{3,4}$/.exec(path)?.[1];
}

export const rowsPath = (kind: string): string => `rows/${kindFile(kind)}.jsonl`;
export const schemaPath = (kind: string): string => `schema/${kindFile(kind)}.schema.json`;
export const MANIFEST_SCHEMA_PATH = "schema/manifest.schema.json";

/** Files every archive has beside its manifest and its evidence. */
export const needed: readonly string[] = [
  "README.txt",
  MANIFEST_SCHEMA_PATH,
  ...archiveKinds.flatMap(({ name }) => [schemaPath(name), rowsPath(name)]),
];
