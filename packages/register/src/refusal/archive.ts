import { list, megabytes, type Words } from "./words";

/** What the service refuses about archives, apart from the general refusals. */
export interface ArchiveRefusals {
  /** It is no ZIP file, or a broken one. */
  ARCHIVE_UNREADABLE: { readonly file: string; readonly problem: string };
  /** A name inside it that no archive of ours has. */
  ARCHIVE_NAME: { readonly file: string; readonly member: string; readonly problem: string };
  /** Larger than what is read. */
  ARCHIVE_LIMIT: {
    readonly file: string;
    readonly member?: string;
    readonly what: "files" | "bytes" | "lineBytes" | "ratio";
    readonly found: number;
    readonly limit: number;
  };
  /** A ZIP file, but not of this kind or of a later version. */
  ARCHIVE_FORMAT: { readonly file: string; readonly found: string; readonly wanted: string };
  /** What the manifest names and what is there differ. */
  ARCHIVE_MEMBERS: {
    readonly file: string;
    readonly missing: readonly string[];
    readonly extra: readonly string[];
  };
  /** A file in it is not the one that was put in. */
  ARCHIVE_HASH: {
    readonly file: string;
    readonly member: string;
    readonly stated: string;
    readonly found: string;
  };
  /** A line that cannot be read, or cannot be. */
  ARCHIVE_LINE: {
    readonly file: string;
    readonly member: string;
    readonly line: number;
    readonly problem: string;
  };
  /** The file of a piece of evidence is not what it was when it was taken in. */
  ARCHIVE_EVIDENCE_DAMAGED: { readonly sha256: string };
  /** The club is in this database already. */
  ARCHIVE_CLUB_KNOWN: { readonly club: string; readonly slug: string };
  /** Another club has the short name. */
  ARCHIVE_SLUG_TAKEN: { readonly slug: string };
  /** A short name that no address can have. */
  ARCHIVE_SLUG: { readonly slug: string };
  /** A backup is read back into an empty database only. */
  BACKUP_NEEDS_EMPTY: { readonly clubs: readonly string[]; readonly people: number };
  /** No list of that name, or one that wants to be told of what. */
  LIST_UNKNOWN: { readonly list: string; readonly known: readonly string[] };
  LIST_CONDITION: { readonly problem: string };
  LIST_NEEDS: { readonly list: string; readonly needs: string };
}

const inFile = (file: string, member: string | undefined) =>
  member === undefined ? file : `${file}, ${member}`;

const limitSays = {
  files: (found: number, limit: number) => `holds ${found} files; at most ${limit} are read`,
  bytes: (found: number, limit: number) =>
    `unpacks to ${megabytes(found)}; at most ${megabytes(limit)} is read`,
  lineBytes: (found: number, limit: number) =>
    `has a line of more than ${megabytes(found)}; at most ${megabytes(limit)} is read`,
  ratio: (found: number, limit: number) =>
    `unpacks to ${Math.round(found)} times its packed size; at most ${limit} times is believed`,
} as const;

const few = (names: readonly string[]) =>
  names.length <= 5 ? list(names) : `${list(names.slice(0, 5))} and ${names.length - 5} more`;

export const archiveWords: Words<ArchiveRefusals> = {
  ARCHIVE_UNREADABLE: ({ file, problem }) => ({
    what: `${file} cannot be read as an archive: ${problem}.`,
    remedy: "Fetch the file again whole; nothing was written.",
  }),
  ARCHIVE_NAME: ({ file, member, problem }) => ({
    what: `${file} holds "${member}": ${problem}.`,
    remedy: "No archive of this program has such a file: do not trust it. Nothing was written.",
  }),
  ARCHIVE_LIMIT: ({ file, member, what, found, limit }) => ({
    what: `${inFile(file, member)} ${limitSays[what](found, limit)}.`,
    remedy: "Look where the file comes from: it may be made to fill a disk. Nothing was written.",
  }),
  ARCHIVE_FORMAT: ({ file, found, wanted }) => ({
    what: `${file} is ${found}; this program reads ${wanted}.`,
    remedy:
      "Give an archive or a backup that this program made, or read it with a later version of the program.",
  }),
  ARCHIVE_MEMBERS: ({ file, missing, extra }) => ({
    what: `${file} is not as its manifest says. Missing: ${few(missing)}. Not named there: ${few(extra)}.`,
    remedy: "Fetch the file again, and change nothing in it; nothing was written.",
  }),
  ARCHIVE_HASH: ({ file, member, stated, found }) => ({
    what: `${file}, ${member} was changed: its SHA-256 is ${found.slice(0, 12)}…, and the manifest says ${stated.slice(0, 12)}….`,
    remedy: "Fetch the file again, and change nothing in it; nothing was written.",
  }),
  ARCHIVE_LINE: ({ file, member, line, problem }) => ({
    what: `${file}, ${member}, line ${line}: ${problem}.`,
    remedy: "The line was not written by this program, or was changed since. Nothing was written.",
  }),
  ARCHIVE_EVIDENCE_DAMAGED: ({ sha256 }) => ({
    what: `The file of the evidence ${sha256.slice(0, 12)}… is not the one that was taken in: it was damaged or is gone.`,
    remedy: "Put the file back from a backup, or withdraw the evidence and delete its file; then try again.",
  }),
  ARCHIVE_CLUB_KNOWN: ({ club, slug }) => ({
    what: `${club} is in this database already, as "${slug}".`,
    remedy:
      "An archive is read into a database that does not have the club: its journal's chain names the club.",
  }),
  ARCHIVE_SLUG_TAKEN: ({ slug }) => ({
    what: `Another club here has the short name "${slug}".`,
    remedy: "Give another one with --as.",
  }),
  ARCHIVE_SLUG: ({ slug }) => ({
    what: `"${slug}" cannot be a club's short name.`,
    remedy: "Use up to 60 small letters, digits and dashes, a letter or digit first.",
  }),
  BACKUP_NEEDS_EMPTY: ({ clubs, people }) => ({
    what: `This database is not empty: it has ${people} people, and these clubs: ${few(clubs)}.`,
    remedy: "A backup is read back into an empty database: name an empty folder with TRUNNION_DATA.",
  }),
  LIST_UNKNOWN: ({ list: asked, known }) => ({
    what: `There is no list "${asked}".`,
    remedy: `Lists: ${list(known)}.`,
  }),
  LIST_CONDITION: ({ problem }) => ({
    what: `The condition of this list cannot be read: ${problem}.`,
    remedy: "Put the condition together again on the register page, and fetch the list from there.",
  }),
  LIST_NEEDS: ({ list: asked, needs }) => ({
    what: `The list "${asked}" is of one ${needs}.`,
    remedy: `Say which ${needs}.`,
  }),
};
