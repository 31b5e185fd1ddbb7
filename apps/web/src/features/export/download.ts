import "server-only";
import { Readable } from "node:stream";
import type { DownloadFile } from "@trunnion/api";
import { answeredPlainly, fileHeaders } from "../../lib/file-answer";

/** Sends a file as it comes; a refusal before its first byte becomes words, a bug goes to the log. */
export function download(place: string, make: () => Promise<DownloadFile>): Promise<Response> {
  return answeredPlainly(place, async () => {
    const { name, mediaType, bytes, content } = await make();
    const length = bytes === undefined ? {} : { "content-length": String(bytes) };
    return new Response(Readable.toWeb(content) as ReadableStream<Uint8Array>, {
      headers: { ...fileHeaders(mediaType, name), ...length },
    });
  });
}
