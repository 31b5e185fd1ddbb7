import { createHash } from "node:crypto";

/**
 * An id that follows from seed, copy and pattern, in the form of a UUIDv7: it begins with the number of the copy as a real
 * one begins with its time, so that what is written together lies together, as in a register that grew.
 */
export function rowIdOf(seed: number, copy: number, row: string): string {
  const hash = createHash("md5").update(`${seed}:${copy}:${row}`).digest("hex");
  const hex = `${copy.toString(16).padStart(12, "0")}7${hash.slice(13, 16)}8${hash.slice(17)}`;
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

/**
 * The same in SQL.
 *
 * @param seed expression of the seed as text
 * @param copy expression of the copy's number
 * @param column expression of the pattern's id
 */
export const rowIdSql = (seed: string, copy: string, column: string): string =>
  `overlay(overlay(overlay(md5(${seed} || ':' || ${copy} || ':' || ${column}::text)
     placing lpad(to_hex(${copy}), 12, '0') from 1) placing '7' from 13) placing '8' from 17)::uuid`;
