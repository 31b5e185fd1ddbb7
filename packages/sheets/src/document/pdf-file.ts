import { type Ref, refText } from "./pdf-text";
import { type PackedStream, packAside } from "./stream";

/** Objects of one packed stream: enough to compress well, few enough to find one quickly. */
const objectsPerStream = 300;
const charactersPerStream = 120_000;
/** Bytes of one line of the list of places: kind, where, which. */
const entryWidth = 7;

export interface Trailer {
  readonly root: Ref;
  readonly info: Ref;
  /** The file's identifier, 32 hexadecimal digits. */
  readonly id: string;
}

interface Stream {
  readonly ref: Ref;
  readonly packed: Promise<PackedStream> | PackedStream;
}

/**
 * A PDF 1.7 file as it grows (ISO 32000-1, 7.5.7 and 7.5.8): objects written out as text go packed into object streams
 * as they come, so that of a thousand sheets only compressed bytes are held. A filled-in event has a million objects; as
 * a tree of a library's objects they cost more than all the drawing.
 */
export class PdfFile {
  private count = 0;
  private readonly streams: Stream[] = [];
  private waiting: Promise<unknown>[] = [];
  private texts: string[] = [];
  private refs: Ref[] = [];
  private characters = 0;
  /** Of an object in a stream: the stream's number, and its place there; 0 for what stands by itself. */
  private readonly streamOf: number[] = [];
  private readonly indexOf: number[] = [];

  nextRef(): Ref {
    return ++this.count;
  }

  /** Writes an object, Latin-1, under a number taken before. */
  put(ref: Ref, text: string): void {
    this.refs.push(ref);
    this.texts.push(text);
    this.characters += text.length + 1;
    if (this.refs.length >= objectsPerStream || this.characters >= charactersPerStream) this.flush();
  }

  add(text: string): Ref {
    const ref = this.nextRef();
    this.put(ref, text);
    return ref;
  }

  putStream(ref: Ref, packed: Promise<PackedStream> | PackedStream): void {
    this.streams.push({ ref, packed });
    if (packed instanceof Promise) this.waiting.push(packed);
  }

  addStream(packed: Promise<PackedStream> | PackedStream): Ref {
    const ref = this.nextRef();
    this.putStream(ref, packed);
    return ref;
  }

  /** Waits until what was written so far is compressed, so that not more than a little lies about unpacked. */
  async settle(): Promise<void> {
    const { waiting } = this;
    this.waiting = [];
    await Promise.all(waiting);
  }

  /** The whole file. */
  async finish({ root, info, id }: Trailer): Promise<Uint8Array> {
    this.flush();
    await this.settle();
    const parts: Uint8Array[] = [Buffer.from("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n", "latin1")];
    let size = parts[0]?.length ?? 0;
    const offsets = new Float64Array(this.count + 2);
    const write = (ref: Ref, { bytes, entries }: PackedStream) => {
      offsets[ref] = size;
      const head = Buffer.from(`${ref} 0 obj\n<<${entries}/Length ${bytes.length}>>\nstream\n`, "latin1");
      parts.push(head, bytes, streamEnd);
      size += head.length + bytes.length + streamEnd.length;
    };
    for (const { ref, packed } of this.streams) write(ref, await packed);
    const places = this.nextRef();
    offsets[places] = size;
    const table = await packAside(
      this.places(offsets),
      `/Type/XRef/Size ${this.count + 1}/W[1 4 2]/Root ${refText(root)}/Info ${refText(info)}/ID[<${id}><${id}>]`,
    );
    const start = size;
    write(places, table);
    parts.push(Buffer.from(`startxref\n${start}\n%%EOF`, "latin1"));
    return joined(parts);
  }

  /** Packs the objects written since the last time. */
  private flush(): void {
    const { refs, texts } = this;
    if (refs.length === 0) return;
    const stream = this.nextRef();
    let offset = 0;
    let head = "";
    refs.forEach((ref, at) => {
      head += `${ref} ${offset} `;
      offset += (texts[at]?.length ?? 0) + 1;
      this.streamOf[ref] = stream;
      this.indexOf[ref] = at;
    });
    const raw = Buffer.from(head + texts.join("\n"), "latin1");
    this.putStream(stream, packAside(raw, `/Type/ObjStm/N ${refs.length}/First ${head.length}`));
    this.refs = [];
    this.texts = [];
    this.characters = 0;
  }

  /** Where each object stands, by number; a number never written is told as free. */
  private places(offsets: Float64Array): Uint8Array {
    const table = Buffer.alloc((this.count + 1) * entryWidth);
    table.writeUInt16BE(0xffff, 5);
    for (let ref = 1; ref <= this.count; ref++) {
      const at = ref * entryWidth;
      const stream = this.streamOf[ref] ?? 0;
      const offset = offsets[ref] ?? 0;
      if (stream === 0 && offset === 0) continue;
      table[at] = stream > 0 ? 2 : 1;
      table.writeUInt32BE(stream > 0 ? stream : offset, at + 1);
      table.writeUInt16BE(stream > 0 ? (this.indexOf[ref] ?? 0) : 0, at + 5);
    }
    return table;
  }
}

const streamEnd = Buffer.from("\nendstream\nendobj\n", "latin1");

/** In memory of its own, which may be handed to another thread. */
function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((size, part) => size + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
