import { Broken } from "./broken";

/** Most entries of one directory and most directories of one file: more is no scan of a document. */
const LIMITS = { entries: 2_000, directories: 200 } as const;

/** Bytes of one value by its type (TIFF 6.0, section 2, and the types 13 and up of its supplements). */
const sizes: Readonly<Record<number, number>> = {
  ...{ 1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8, 13: 4 },
};

/** One field of a directory. */
export interface TiffEntry {
  readonly tag: number;
  readonly type: number;
  /** Where its twelve bytes stand. */
  readonly at: number;
  /** Where its values stand, and how many bytes they are. */
  readonly valuesAt: number;
  readonly length: number;
}

export interface TiffDirectory {
  readonly at: number;
  readonly entries: readonly TiffEntry[];
  /** Where the next directory stands; 0 for the last. */
  readonly next: number;
}

/** Reads the directories of a TIFF (TIFF 6.0, section 2), which EXIF is written in too. */
export class TiffReader {
  readonly #little: boolean;
  #read = 0;

  /** @throws Broken for what does not begin as TIFF */
  constructor(readonly bytes: Buffer) {
    const order = bytes.toString("latin1", 0, 2);
    if ((order !== "II" && order !== "MM") || bytes.length < 8) throw new Broken("it does not begin as TIFF");
    this.#little = order === "II";
    const version = this.short(2);
    if (version === 43) throw new Broken("it is BigTIFF, made for files above 4 GB; save it as plain TIFF");
    if (version !== 42) throw new Broken("it does not begin as TIFF");
  }

  /** Where the first directory stands. */
  get first(): number {
    return this.long(4);
  }

  short(at: number): number {
    this.#within(at, 2);
    return this.#little ? this.bytes.readUInt16LE(at) : this.bytes.readUInt16BE(at);
  }

  long(at: number): number {
    this.#within(at, 4);
    return this.#little ? this.bytes.readUInt32LE(at) : this.bytes.readUInt32BE(at);
  }

  putShort(value: number, at: number): void {
    if (this.#little) this.bytes.writeUInt16LE(value, at);
    else this.bytes.writeUInt16BE(value, at);
  }

  putLong(value: number, at: number): void {
    if (this.#little) this.bytes.writeUInt32LE(value, at);
    else this.bytes.writeUInt32BE(value, at);
  }

  /** @throws Broken for a directory that lies outside the file, or is one too many */
  directory(at: number): TiffDirectory {
    this.#read += 1;
    if (this.#read > LIMITS.directories)
      throw new Broken(`it has more than ${LIMITS.directories} directories`);
    const count = this.short(at);
    if (count > LIMITS.entries) throw new Broken(`a directory of it has ${count} entries`);
    this.#within(at, 2 + count * 12);
    const entries = Array.from({ length: count }, (_, index) => this.#entry(at + 2 + index * 12));
    const end = at + 2 + count * 12;
    return { at, entries, next: end + 4 <= this.bytes.length ? this.long(end) : 0 };
  }

  #entry(at: number): TiffEntry {
    const type = this.short(at + 2);
    const length = this.long(at + 4) * (sizes[type] ?? 0);
    const valuesAt = length <= 4 ? at + 8 : this.long(at + 8);
    this.#within(valuesAt, length);
    return { tag: this.short(at), type, at, valuesAt, length };
  }

  #within(at: number, length: number): void {
    if (at + length > this.bytes.length) throw new Broken("it ends before what it names");
  }
}
