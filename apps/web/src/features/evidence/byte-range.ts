import type { ByteRange } from "@trunnion/api";

/**
 * The one range of bytes that a request asks for (RFC 9110, 14.1.2 and 14.2); nothing where it asks for none, for
 * several, or for what is not there: then the whole is sent, as the standard allows.
 */
export function byteRange(header: string | null, bytes: number): ByteRange | undefined {
  const [, from, to] = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(header ?? "") ?? [];
  if (from === undefined || to === undefined || (from === "" && to === "")) return undefined;
  if (from === "") {
    const count = Math.min(Number(to), bytes);
    return count === 0 ? undefined : { first: bytes - count, last: bytes - 1 };
  }
  const first = Number(from);
  const last = to === "" ? bytes - 1 : Math.min(Number(to), bytes - 1);
  return first > last ? undefined : { first, last };
}
