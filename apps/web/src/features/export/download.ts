import "server-only";
import { Readable } from "node:stream";
import { type DownloadFile, logFault, refusalOf } from "@trunnion/api";
import type { RefusalText } from "@trunnion/register";

const fault: RefusalText = {
  what: "The file could not be made.",
  remedy: "Try again; if it stays, tell whoever runs this.",
};

/** Plain text, since a browser shows it in place of the file: what was wrong, then what to do. */
function told({ what, remedy }: RefusalText, status: number): Response {
  const headers = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };
  return new Response(`${what}\n${remedy}\n`, { status, headers });
}

/** Sends a file as it comes; a refusal before its first byte becomes words, a bug goes to the log. */
export async function download(place: string, make: () => Promise<DownloadFile>): Promise<Response> {
  try {
    const { name, mediaType, bytes, content } = await make();
    return new Response(Readable.toWeb(content) as ReadableStream<Uint8Array>, {
      headers: {
        "content-type": mediaType,
        "content-disposition": `attachment; filename="${name.replace(/[^\w.-]/g, "_")}"`,
        "cache-control": "private, no-store",
        ...(bytes === undefined ? {} : { "content-length": String(bytes) }),
      },
    });
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return told(refusal.text, refusal.status);
    logFault(error, place);
    return told(fault, 500);
  }
}
