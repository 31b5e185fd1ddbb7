import "server-only";
import { once } from "node:events";
import { Readable } from "node:stream";
import { Busboy } from "@fastify/busboy";
import { refused, registerFileBytes } from "@trunnion/register";

/** Bytes read at most of a request that is refused already: a browser hears an answer only when it has sent all. */
const DISCARDED = 200_000_000;
/** Bytes of a table that was pasted. */
const PASTED = 4_000_000;

interface Sent {
  readonly file: string;
  readonly stream: Readable;
}

/** A file's name for people: what stands behind the last stroke, without controls, not too long. */
function nameOf(sent: string): string {
  const name = sent.replace(/^.*[/\\]/, "").replace(/\p{Cc}/gu, "");
  return name === "" ? "file" : name.slice(-120);
}

/**
 * Reads the form that brings a file, or a table that was pasted, and gives it on as it comes: it is never whole in
 * memory. What follows the first of them is read and thrown away.
 *
 * @throws Refusal FILE_EMPTY when nothing was chosen; whatever `take` throws
 */
export async function receiveTable<T>(request: Request, take: (sent: Sent) => Promise<T>): Promise<T> {
  const { body, headers } = request;
  const type = headers.get("content-type") ?? "";
  if (!body || !/^multipart\/form-data;/i.test(type)) throw refused("FILE_EMPTY", { file: "The form" });
  const announced = Number(headers.get("content-length") ?? 0);
  const parser = new Busboy({
    headers: { "content-type": type },
    limits: { files: 1, fields: 5, parts: 8, fieldSize: PASTED, headerPairs: 40 },
    preservePath: true,
  });
  let taken: Promise<T> | undefined;
  let pasted = "";
  parser.on("file", (_field, stream, name) => {
    if ((name ?? "") === "" || taken) {
      stream.resume();
      return;
    }
    // Announced far too large: nothing of it is kept, and the browser is let finish.
    if (announced > registerFileBytes + 100_000) {
      stream.resume();
      const details = { file: nameOf(name ?? ""), bytes: announced, limit: registerFileBytes };
      taken = Promise.reject(refused("FILE_TOO_LARGE", details));
    } else {
      taken = take({ file: nameOf(name ?? ""), stream }).finally(() => stream.resume());
    }
    taken.catch(() => undefined);
  });
  parser.on("field", (name, value) => {
    if (name === "pasted") pasted = value;
  });
  const ended = Promise.race([once(parser, "finish"), once(parser, "error")]).catch(() => undefined);
  let bytes = 0;
  for await (const part of body as unknown as AsyncIterable<Uint8Array>) {
    bytes += part.length;
    if (bytes > DISCARDED) break;
    if (!parser.write(part)) await Promise.race([once(parser, "drain"), ended]);
  }
  parser.end();
  await ended;
  if (taken) return taken;
  if (pasted.trim() === "") throw refused("FILE_EMPTY", { file: "The form" });
  return take({ file: "pasted table", stream: Readable.from([Buffer.from(pasted)]) });
}
