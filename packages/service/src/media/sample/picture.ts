import { deflateSync } from "node:zlib";
import sharp from "sharp";

/** What no kept file may say: put into fields of every kind. */
export const SECRET = "Zacharias Kjeldmo 59.9139 N";

const exif = {
  IFD0: { Artist: SECRET, ImageDescription: SECRET },
  IFD2: { DateTimeOriginal: "2019:06:01 12:13:14", UserComment: SECRET },
  IFD3: { GPSLatitudeRef: "N", GPSLatitude: "59/1 54/1 50/1", GPSAreaInformation: SECRET },
};
const xmp = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" dc:creator="${SECRET}"/></rdf:RDF></x:xmpmeta>`;

export interface SampleInput {
  readonly width?: number;
  readonly height?: number;
  readonly orientation?: number;
  /** Another picture with every seed. */
  readonly seed?: number;
  /** Without anything said in it. */
  readonly plain?: boolean;
}

/** Pixels with an edge and some texture; the top left corner is red. */
function pixels(width: number, height: number, seed: number): Buffer {
  const raw = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const corner = x < width / 3 && y < height / 3;
      const at = (y * width + x) * 3;
      raw[at] = corner ? 230 : (x * 3 + seed * 17) % 90;
      raw[at + 1] = corner ? 20 : (y * 5) % 120;
      raw[at + 2] = corner ? 20 : ((x ^ y) + seed) % 200;
    }
  }
  return raw;
}

type Format = "jpeg" | "png" | "webp" | "avif" | "tiff";

/** A picture made here and now, which says where, when and by whom it was taken in as many ways as the format knows. */
export async function samplePicture(format: Format, input: SampleInput = {}): Promise<Buffer> {
  const { width = 96, height = 64, orientation = 1, seed = 0, plain = false } = input;
  const picture = sharp(pixels(width, height, seed), { raw: { width, height, channels: 3 } });
  const told = plain ? picture : picture.withExif(exif).withXmp(xmp).withMetadata({ orientation });
  if (format === "tiff") {
    const tiff = await picture.tiff({ compression: "lzw" }).toBuffer();
    return plain ? tiff : withTiffFields(tiff, orientation);
  }
  return told[format](format === "avif" ? { effort: 0 } : {}).toBuffer();
}

/** A TIFF with EXIF, position and names, which the library that makes it cannot write (TIFF 6.0, section 2). */
function withTiffFields(tiff: Buffer, orientation: number): Buffer {
  const parts: Buffer[] = [tiff.length % 2 ? Buffer.concat([tiff, Buffer.of(0)]) : tiff];
  const length = () => parts.reduce((sum, part) => sum + part.length, 0);
  const add = (part: Buffer) => {
    const at = length();
    parts.push(part.length % 2 ? Buffer.concat([part, Buffer.of(0)]) : part);
    return at;
  };
  const field = (tag: number, type: number, count: number, value: number) => {
    const entry = Buffer.alloc(12);
    entry.writeUInt16LE(tag, 0);
    entry.writeUInt16LE(type, 2);
    entry.writeUInt32LE(count, 4);
    entry.writeUInt32LE(value, 8);
    return entry;
  };
  const text = (tag: number, said: string) => field(tag, 2, said.length + 1, add(Buffer.from(`${said}\0`)));
  const directory = (fields: readonly Buffer[], next = 0) => {
    const [count, after] = [Buffer.alloc(2), Buffer.alloc(4)];
    count.writeUInt16LE(fields.length);
    after.writeUInt32LE(next);
    return add(
      Buffer.concat([count, ...fields.toSorted((a, b) => a.readUInt16LE(0) - b.readUInt16LE(0)), after]),
    );
  };
  const position = directory([text(28, SECRET)]);
  const taken = directory([text(36867, "2019:06:01 12:13:14"), text(37510, SECRET)]);
  const first = tiff.readUInt32LE(4);
  const own = Array.from({ length: tiff.readUInt16LE(first) }, (_, index) =>
    tiff.subarray(first + 2 + index * 12, first + 14 + index * 12),
  ).filter((entry) => ![274, 700].includes(entry.readUInt16LE(0)));
  const said = [text(315, SECRET), text(270, SECRET), text(700, SECRET)];
  const more = [field(274, 3, 1, orientation), field(34665, 4, 1, taken), field(34853, 4, 1, position)];
  const at = directory([...own, ...said, ...more]);
  const made = Buffer.concat(parts);
  made.writeUInt32LE(at, 4);
  return made;
}

function chunk(type: string, body: Buffer): Buffer {
  const made = Buffer.alloc(12 + body.length);
  made.writeUInt32BE(body.length, 0);
  made.write(type, 4, "latin1");
  body.copy(made, 8);
  made.writeUInt32BE(crc(made.subarray(4, 8 + body.length)), 8 + body.length);
  return made;
}

/** CRC-32 as PNG has it (PNG third edition, annex D). */
function crc(bytes: Buffer): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
}

/** A PNG of any size, all black, that is tiny as a file: a decompression bomb where it is large. */
export function blackPng(width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([1, 0, 0, 0, 0], 8);
  const rows = deflateSync(Buffer.alloc((Math.ceil(width / 8) + 1) * height), { level: 9 });
  const signature = Buffer.from("89504e470d0a1a0a", "hex");
  return Buffer.concat([signature, chunk("IHDR", head), chunk("IDAT", rows), chunk("IEND", Buffer.of())]);
}

/** A one-page PDF (ISO 32000-2) that runs a script when it is opened, where a reader lets it. */
export function samplePdf({ script = "app.alert('opened')" }: { readonly script?: string } = {}): Buffer {
  const objects = [
    "<< /Type /Catalog /Pages 2 0 R /OpenAction 4 0 R >>",
    "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
    "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] >>",
    `<< /S /JavaScript /JS (${script.replace(/[()\\]/g, "\\$&")}) >>`,
  ];
  let made = "%PDF-1.7\n";
  const places = objects.map((object, index) => {
    const at = made.length;
    made += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return `${String(at).padStart(10, "0")} 00000 n \n`;
  });
  const table = made.length;
  made += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${places.join("")}`;
  made += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${table}\n%%EOF\n`;
  return Buffer.from(made, "latin1");
}
