/** How far bytes are UTF-8. */
export interface Utf8Measure {
  /** Whole sequences of more than one byte. */
  readonly sequences: number;
  /** Bytes that belong to no sequence. */
  readonly strays: number;
  /** Place of the first of these; -1 without one. */
  readonly firstStray: number;
}

/** Bytes that follow a first byte; nothing for one that begins no sequence (RFC 3629, 4). */
function followersOf(byte: number): number | undefined {
  if (byte >= 0xc2 && byte <= 0xdf) return 1;
  if (byte >= 0xe0 && byte <= 0xef) return 2;
  return byte >= 0xf0 && byte <= 0xf4 ? 3 : undefined;
}

function isSequence(bytes: Uint8Array, start: number, followers: number): boolean {
  const rest = bytes.subarray(start + 1, start + 1 + followers);
  return rest.length === followers && rest.every((byte) => byte >= 0x80 && byte <= 0xbf);
}

/**
 * Counts what is UTF-8 in bytes and what is not, to tell a spoilt UTF-8 file from one in another encoding. It knows
 * the shape of a sequence, not every rule about which are allowed: whether text *is* UTF-8, the decoder says.
 */
export function measureUtf8(bytes: Uint8Array): Utf8Measure {
  let sequences = 0;
  let strays = 0;
  let firstStray = -1;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i] ?? 0;
    if (byte < 0x80) continue;
    const followers = followersOf(byte);
    if (followers !== undefined && isSequence(bytes, i, followers)) {
      sequences++;
      i += followers;
      continue;
    }
    strays++;
    if (firstStray < 0) firstStray = i;
  }
  return { sequences, strays, firstStray };
}
