import "server-only";
import { once } from "node:events";
import { mkdtemp, open, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Readable } from "node:stream";
import { Busboy } from "@fastify/busboy";
import type { ReceivedFile } from "@trunnion/api";
import { evidenceLimits, quotedFileName, type Refusal, refused } from "@trunnion/register";

/** Bytes read at most of a request that is refused already: a browser hears an answer only when it has sent all. */
const DISCARDED = 600_000_000;
/** Fields of a form beside its files, and bytes of one. */
const FIELDS = { fields: 20, fieldSize: 4_000, parts: 60, headerPairs: 40 } as const;
/** Room that the form itself takes in a request. */
const FORM_BYTES = 100_000;

/** A form with files, as it was received. */
export interface Received {
  readonly fields: Readonly<Record<string, string>>;
  readonly files: readonly ReceivedFile[];
}

/** What a request brings in the course of being read. */
class Reception {
  readonly fields: Record<string, string> = {};
  failure: Refusal | undefined;
  readonly #writing: Promise<ReceivedFile | undefined>[] = [];
  readonly #streams: Readable[] = [];

  constructor(readonly folder: string) {}

  fail(failure: Refusal): void {
    this.failure ??= failure;
  }

  file(stream: Readable, name: string): void {
    const path = join(this.folder, String(this.#writing.length));
    this.#streams.push(stream);
    this.#writing.push(this.#write(stream, name, path));
  }

  async done(): Promise<Received> {
    // The rest of a refused form was thrown away: its last file would wait for it for ever.
    if (this.failure) for (const stream of this.#streams) stream.destroy();
    // In the order they were sent, whichever was written first.
    const files = (await Promise.all(this.#writing)).filter((file) => file !== undefined);
    if (this.failure) throw this.failure;
    return { fields: this.fields, files };
  }

  /** Writes a file as it comes. One that is too large is counted to its end, so that the refusal can say how large. */
  async #write(stream: Readable, name: string, path: string): Promise<ReceivedFile | undefined> {
    const limit = evidenceLimits.fileBytes;
    const handle = await open(path, "wx", 0o600);
    let bytes = 0;
    try {
      for await (const part of stream) {
        bytes += (part as Buffer).length;
        if (bytes <= limit) await handle.write(part as Buffer);
      }
    } catch {
      this.fail(refused("EVIDENCE_CUT_OFF", {}));
    } finally {
      await handle.close();
    }
    // A field for files that was left empty.
    if (name === "" && bytes === 0) return undefined;
    if (bytes <= limit) return { name, path };
    this.fail(refused("EVIDENCE_TOO_LARGE", { file: quotedFileName(name), bytes, limit }));
    return undefined;
  }
}

function parserFor(headers: Headers, reception: Reception): InstanceType<typeof Busboy> {
  const parser = new Busboy({
    headers: { "content-type": headers.get("content-type") ?? "" },
    limits: { ...FIELDS, files: evidenceLimits.files },
    preservePath: true,
  });
  parser.on("field", (name, value) => {
    if (/^[a-z]{1,20}$/i.test(name)) reception.fields[name] = value;
  });
  parser.on("file", (_field, stream, name) => reception.file(stream, name ?? ""));
  parser.on("filesLimit", () =>
    reception.fail(refused("EVIDENCE_TOO_MANY", { limit: evidenceLimits.files })),
  );
  for (const limit of ["partsLimit", "fieldsLimit"] as const) {
    parser.on(limit, () => reception.fail(refused("EVIDENCE_CUT_OFF", {})));
  }
  parser.on("error", () => reception.fail(refused("EVIDENCE_CUT_OFF", {})));
  return parser;
}

interface Feeding {
  readonly parser: InstanceType<typeof Busboy>;
  /** Ends when the parser can make nothing more of it. */
  readonly broken: Promise<unknown>;
  readonly reception: Reception;
  /** Bytes of the whole, as the request says; 0 where it does not. */
  readonly announced: number;
}

const tooLarge = (bytes: number) =>
  refused("EVIDENCE_TOO_LARGE", { file: "All files together", bytes, limit: evidenceLimits.requestBytes });

/** Gives a request's body to the parser as it comes; once it is refused, the rest is read and thrown away. */
async function feed(
  body: AsyncIterable<Uint8Array>,
  { parser, broken, reception, announced }: Feeding,
): Promise<void> {
  let bytes = 0;
  for await (const part of body) {
    bytes += part.length;
    if (bytes > evidenceLimits.requestBytes + FORM_BYTES)
      reception.fail(tooLarge(Math.max(bytes, announced)));
    if (bytes > DISCARDED) break;
    if (reception.failure) continue;
    if (!parser.write(part)) await Promise.race([once(parser, "drain"), broken]);
  }
}

async function read(request: Request, reception: Reception): Promise<void> {
  const { body, headers } = request;
  if (!body || !/^multipart\/form-data;/i.test(headers.get("content-type") ?? "")) {
    throw refused("EVIDENCE_CUT_OFF", {});
  }
  const announced = Number(headers.get("content-length") ?? 0);
  if (announced > evidenceLimits.requestBytes + FORM_BYTES) reception.fail(tooLarge(announced));
  const parser = parserFor(headers, reception);
  const broken = once(parser, "error").catch(() => undefined);
  const finished = once(parser, "finish").catch(() => undefined);
  try {
    await feed(body as unknown as AsyncIterable<Uint8Array>, { parser, broken, reception, announced });
  } catch {
    // Whoever sent it hung up.
    reception.fail(refused("EVIDENCE_CUT_OFF", {}));
  }
  parser.end();
  if (reception.failure) parser.destroy();
  await Promise.race([finished, broken, ...(reception.failure ? [Promise.resolve()] : [])]);
}

/**
 * Reads a form with files as it comes, each into a file of its own, and gives them to `work`; afterwards none of them is
 * there any more.
 *
 * @throws Refusal EVIDENCE_TOO_LARGE, EVIDENCE_TOO_MANY, EVIDENCE_CUT_OFF
 */
export async function receiveFiles<T>(
  request: Request,
  work: (received: Received) => Promise<T>,
): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), "trunnion-upload-"));
  try {
    const reception = new Reception(folder);
    await read(request, reception);
    return await work(await reception.done());
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
