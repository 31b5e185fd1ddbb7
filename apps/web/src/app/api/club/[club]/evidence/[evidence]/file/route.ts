import { Readable } from "node:stream";
import { originalFile } from "@trunnion/api";
import { answerFile, forEver, inert } from "../../../../../../../features/evidence/answer";
import { byteRange } from "../../../../../../../features/evidence/byte-range";
import { contentDisposition } from "../../../../../../../features/evidence/disposition";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly evidence: string }>;
}

/** The file of a piece of evidence as it is kept, or a part of it. A document is handed out, never shown. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, evidence } = await params;
  return answerFile(request, club, async (asked) => {
    const wanted = request.headers.get("range");
    const file = await originalFile(asked, evidence, (bytes) => byteRange(wanted, bytes));
    const range = byteRange(wanted, file.bytes);
    const headers = new Headers({
      ...inert,
      "content-type": file.mediaType,
      "content-disposition": contentDisposition(file.picture ? "inline" : "attachment", file.fileName),
      "content-length": String(range ? range.last - range.first + 1 : file.bytes),
      "accept-ranges": "bytes",
      "cache-control": forEver,
      etag: `"${file.sha256}"`,
    });
    if (request.headers.get("if-none-match") === `"${file.sha256}"`) {
      file.body.destroy();
      headers.delete("content-length");
      return new Response(null, { status: 304, headers });
    }
    if (range) headers.set("content-range", `bytes ${range.first}-${range.last}/${file.bytes}`);
    const body = Readable.toWeb(file.body) as ReadableStream<Uint8Array>;
    return new Response(body, { status: range ? 206 : 200, headers });
  });
}
