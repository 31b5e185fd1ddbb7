import { createHash } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { buffer } from "node:stream/consumers";
import { type SigningKey, signatures } from "./signature";

/** A store on the loopback interface that speaks PUT, GET, HEAD and DELETE of objects, path style, and demands signatures. */
export interface ObjectServer {
  readonly endpoint: string;
  /** What it keeps, by bucket and key. */
  readonly objects: Map<string, Buffer>;
  /** What it was asked, in order: "PUT /bucket/key". */
  readonly asked: string[];
  /** Why it refused something; empty as long as everything was signed well. */
  readonly refusals: string[];
  close(): Promise<void>;
}

function part(content: Buffer, range: string | undefined): Buffer | undefined {
  const [, first, last] = /^bytes=(\d+)-(\d+)$/.exec(range ?? "") ?? [];
  return first === undefined ? undefined : content.subarray(Number(first), Number(last) + 1);
}

function refuse(response: ServerResponse, status: number, code: string): void {
  response.writeHead(status, { "content-type": "application/xml" });
  response.end(`<?xml version="1.0"?><Error><Code>${code}</Code><Message>${code}</Message></Error>`);
}

function whyRefused(request: IncomingMessage, body: Buffer, key: SigningKey): string | undefined {
  const { method = "", url = "", headers } = request;
  const found = signatures({ method, url, headers }, key);
  if (!found) return `${method} ${url}: not signed`;
  if (found.borne !== found.due) return `${method} ${url}: signature does not match`;
  const said = headers["x-amz-content-sha256"];
  if (said !== createHash("sha256").update(body).digest("hex"))
    return `${method} ${url}: body is not the one signed`;
  return undefined;
}

function answer(
  server: Pick<ObjectServer, "objects">,
  request: IncomingMessage,
  body: Buffer,
  response: ServerResponse,
) {
  const path = decodeURIComponent((request.url ?? "").split("?")[0] ?? "");
  const kept = server.objects.get(path);
  if (request.method === "PUT") {
    server.objects.set(path, body);
    response.writeHead(200, { etag: `"${createHash("md5").update(body).digest("hex")}"` }).end();
  } else if (request.method === "DELETE") {
    server.objects.delete(path);
    response.writeHead(204).end();
  } else if (!kept) {
    if (request.method === "HEAD") response.writeHead(404).end();
    else refuse(response, 404, "NoSuchKey");
  } else {
    const wanted = part(kept, request.headers.range);
    response.writeHead(wanted ? 206 : 200, { "content-length": String((wanted ?? kept).length) });
    response.end(request.method === "HEAD" ? undefined : (wanted ?? kept));
  }
}

export async function openObjectServer(key: SigningKey): Promise<ObjectServer> {
  const objects = new Map<string, Buffer>();
  const asked: string[] = [];
  const refusals: string[] = [];
  const http = createServer((request, response) => {
    void buffer(request).then((body) => {
      asked.push(`${request.method} ${request.url}`);
      const why = whyRefused(request, body, key);
      if (why === undefined) return answer({ objects }, request, body, response);
      refusals.push(why);
      refuse(response, 403, "SignatureDoesNotMatch");
    });
  });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  const { port } = http.address() as AddressInfo;
  return {
    endpoint: `http://127.0.0.1:${port}`,
    objects,
    asked,
    refusals,
    close: () =>
      new Promise((resolve) => {
        http.close(() => resolve());
        http.closeAllConnections();
      }),
  };
}
