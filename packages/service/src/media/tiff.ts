import { Broken } from "./broken";
import { type TiffDirectory, type TiffEntry, TiffReader } from "./tiff-directory";

/** Fields that say how the picture is coded and looks (TIFF 6.0, parts 1 and 2; 34675 is the colour profile). */
const needed = new Set([
  ...[
    254, 255, 256, 257, 258, 259, 262, 263, 264, 265, 266, 273, 277, 278, 279, 280, 281, 282, 283, 284, 290,
    291,
  ],
  ...[
    292, 293, 296, 297, 301, 317, 318, 319, 320, 321, 322, 323, 324, 325, 332, 333, 334, 336, 338, 339, 340,
    341,
  ],
  ...[342, 347, 529, 530, 531, 532, 34675],
]);
/** Where the coded picture stands and how long it is: in strips, or in tiles. */
const pieces = [
  { offsets: 273, lengths: 279 },
  { offsets: 324, lengths: 325 },
] as const;

function numbersOf(reader: TiffReader, entry: TiffEntry): readonly number[] {
  const size = entry.type === 3 ? 2 : 4;
  const count = entry.length / size;
  const read = (at: number) => (size === 2 ? reader.short(at) : reader.long(at));
  return Array.from({ length: count }, (_, index) => read(entry.valuesAt + index * size));
}

/** What of a file is taken over, to the place where it stood. */
class Kept {
  readonly bytes: Buffer;

  constructor(readonly reader: TiffReader) {
    this.bytes = Buffer.alloc(reader.bytes.length);
    this.take(0, 8);
  }

  take(at: number, length: number): void {
    if (at + length > this.bytes.length) throw new Broken("it ends before the picture does");
    this.reader.bytes.copy(this.bytes, at, at, at + length);
  }

  /** The coded picture of a page. */
  takePicture({ entries }: TiffDirectory): void {
    const find = (tag: number) => entries.find((entry) => entry.tag === tag);
    for (const { offsets, lengths } of pieces) {
      const [places, sizes] = [find(offsets), find(lengths)];
      if (!places) continue;
      if (!sizes) throw new Broken("it does not say how long its parts are");
      const long = numbersOf(this.reader, sizes);
      numbersOf(this.reader, places).forEach((at, index) => {
        this.take(at, long[index] ?? 0);
      });
    }
  }

  /** The directory itself, its ranks closed over the fields that go. */
  takeDirectory({ at, entries, next }: TiffDirectory): void {
    const stay = entries.filter(({ tag }) => needed.has(tag));
    const copy = new TiffReader(this.bytes);
    copy.putShort(stay.length, at);
    stay.forEach((entry, index) => {
      this.reader.bytes.copy(this.bytes, at + 2 + index * 12, entry.at, entry.at + 12);
    });
    const nextAt = at + 2 + stay.length * 12;
    if (nextAt + 4 <= this.bytes.length) copy.putLong(next, nextAt);
  }
}

/**
 * A TIFF without EXIF, position, XMP, IPTC, names, dates and other fields that say nothing of how it looks, nor any byte
 * that nothing names. What stays stands where it stood, so every page keeps its pixels and its compression to the bit.
 *
 * @throws Broken where a directory, field or part lies outside the file
 */
export function stripTiff(bytes: Buffer): Buffer {
  const reader = new TiffReader(bytes);
  const kept = new Kept(reader);
  let at = reader.first;
  while (at !== 0) {
    // The reader counts directories, so a ring of them ends too.
    const directory = reader.directory(at);
    kept.takePicture(directory);
    for (const { tag, at: own, valuesAt, length } of directory.entries) {
      // Short values stand in the entry itself.
      if (needed.has(tag) && valuesAt !== own + 8) kept.take(valuesAt, length);
    }
    kept.takeDirectory(directory);
    at = directory.next;
  }
  return kept.bytes;
}
