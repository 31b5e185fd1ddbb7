/** What is read of an archive at most: more is taken for a file that was made to fill a disk. */
export const archiveLimits = {
  /** Files in it. */
  files: 1_000_000,
  /** All files unpacked, bytes. */
  bytes: 1e12,
  /** Unpacked over packed size of one file, where it is more than a megabyte; records of a register come to 5 to 40. */
  ratio: 300,
  /** One line of a file of rows, bytes. */
  lineBytes: 16e6,
  /** Manifest and schemas, which are read whole, bytes. */
  wholeBytes: 512e6,
} as const;

/** Below this a high ratio does no harm, bytes. */
export const SMALL = 1e6;

/** What is wrong with a name inside an archive; nothing for one that our archives could have. */
export function nameProblem(name: string): string | undefined {
  if (name === "") return "a file without a name";
  if (/^([/\\]|[A-Za-z]:)/.test(name)) return "an absolute path";
  if (name.includes("\\")) return "a path with backslashes";
  if (name.split("/").includes("..")) return "a path that climbs out of the archive";
  if (name.length > 200) return "a name longer than 200 characters";
  if (!/^[A-Za-z0-9][A-Za-z0-9._/-]*$/.test(name) || name.includes("//")) {
    return "a name with characters that are in none of ours";
  }
  return undefined;
}
