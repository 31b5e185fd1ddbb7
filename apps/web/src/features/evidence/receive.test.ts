import { readdir, readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { Refusal } from "@trunnion/register";
import { describe, expect, test, vi } from "vitest";
import { receiveFiles } from "./receive";

vi.mock("server-only", () => ({}));

const BOUNDARY = "----part";

interface Part {
  readonly name: string;
  readonly fileName?: string;
  readonly content: string | Uint8Array;
}

function formBody(parts: readonly Part[]): Uint8Array<ArrayBuffer> {
  const pieces = parts.flatMap(({ name, fileName, content }) => {
    const file = fileName === undefined ? "" : `; filename="${fileName}"\r\ncontent-type: image/jpeg`;
    const head = `--${BOUNDARY}\r\ncontent-disposition: form-data; name="${name}"${file}\r\n\r\n`;
    return [Buffer.from(head), Buffer.from(content), Buffer.from("\r\n")];
  });
  return new Uint8Array(Buffer.concat([...pieces, Buffer.from(`--${BOUNDARY}--\r\n`)]));
}

const type = `multipart/form-data; boundary=${BOUNDARY}`;

function sent(body: BodyInit, headers: Record<string, string> = {}): Request {
  return new Request("http://localhost/", {
    method: "POST",
    body,
    headers: { "content-type": type, ...headers },
    duplex: "half",
  } as RequestInit);
}

/** Megabytes one after another, without ever holding them. */
function stream(
  head: string,
  megabytes: number,
  tail = `\r\n--${BOUNDARY}--\r\n`,
): ReadableStream<Uint8Array> {
  let left = megabytes;
  const part = new Uint8Array(1_000_000);
  return new ReadableStream({
    start: (controller) => controller.enqueue(Buffer.from(head)),
    pull: (controller) => {
      if (left-- > 0) return controller.enqueue(part);
      controller.enqueue(Buffer.from(tail));
      controller.close();
    },
  });
}

const fileHead = (name: string) =>
  `--${BOUNDARY}\r\ncontent-disposition: form-data; name="file"; filename="${name}"\r\ncontent-type: image/jpeg\r\n\r\n`;

const uploads = async () => (await readdir(tmpdir())).filter((name) => name.startsWith("trunnion-upload-"));

async function refusalOf(request: Request) {
  const before = await uploads();
  let worked = false;
  const caught = await receiveFiles(request, async () => {
    worked = true;
  }).catch((error: unknown) => error);
  expect(worked).toBe(false);
  expect(await uploads()).toEqual(before);
  if (!(caught instanceof Refusal)) throw new Error(`no refusal: ${String(caught)}`);
  return { code: caught.code, details: caught.details };
}

describe("a form with files", () => {
  test("is read field by field and file by file, in any order, and leaves nothing behind", async () => {
    const before = await uploads();
    const body = formBody([
      { name: "caption", content: "Bråtvær" },
      { name: "file", fileName: "a.jpg", content: "first" },
      { name: "for", content: "car:1" },
      { name: "file", fileName: "C:\\x\\ø.jpg", content: new Uint8Array([0, 255, 13, 10]) },
      { name: "file", fileName: "", content: "" },
    ]);
    const seen = await receiveFiles(sent(body), async ({ fields, files }) => ({
      fields,
      files: await Promise.all(files.map(async ({ name, path }) => [name, [...(await readFile(path))]])),
    }));
    expect(seen).toEqual({
      fields: { caption: "Bråtvær", for: "car:1" },
      files: [
        ["a.jpg", [...Buffer.from("first")]],
        ["C:\\x\\ø.jpg", [0, 255, 13, 10]],
      ],
    });
    expect(await uploads()).toEqual(before);
  });

  test("gives its files in the order they were sent, though a later and smaller one is written first", async () => {
    const sizes = [3_000_000, 2, 1_500_000, 1, 40_000];
    const names = sizes.map((size, index) => `${index}-${size}.jpg`);
    const body = formBody(
      sizes.map((size, index) => ({
        name: "file",
        fileName: names[index] ?? "",
        content: new Uint8Array(size).fill(index),
      })),
    );
    expect(await receiveFiles(sent(body), async ({ files }) => files.map(({ name }) => name))).toEqual(names);
  });

  test("of a file of 60 MB is refused with the figures, and none of it is kept", async () => {
    expect(await refusalOf(sent(stream(fileHead("big.jpg"), 60)))).toEqual({
      code: "EVIDENCE_TOO_LARGE",
      details: { file: "big.jpg", bytes: 60_000_000, limit: 40_000_000 },
    });
  });

  test("of 250 MB is refused while it comes, and while it says so beforehand", async () => {
    const limit = 200_000_000;
    const said = { "content-length": "250000123" };
    expect(await refusalOf(sent(stream(fileHead("huge.jpg"), 250), said))).toEqual({
      code: "EVIDENCE_TOO_LARGE",
      details: { file: "All files together", bytes: 250_000_123, limit },
    });
    const unsaid = await refusalOf(sent(stream(fileHead("huge.jpg"), 250)));
    expect(unsaid).toMatchObject({
      code: "EVIDENCE_TOO_LARGE",
      details: { file: "All files together", limit },
    });
  });

  test("of more than 20 files is refused", async () => {
    const parts = Array.from({ length: 21 }, (_, i) => ({
      name: "file",
      fileName: `${i}.jpg`,
      content: "x",
    }));
    expect(await refusalOf(sent(formBody(parts)))).toEqual({
      code: "EVIDENCE_TOO_MANY",
      details: { limit: 20 },
    });
    const twenty = await receiveFiles(sent(formBody(parts.slice(1))), async ({ files }) => files.length);
    expect(twenty).toBe(20);
  });

  test("whose sender hangs up is no fault, and leaves nothing behind", async () => {
    let sentParts = 0;
    const body = new ReadableStream<Uint8Array>({
      start: (controller) => controller.enqueue(Buffer.from(fileHead("lost.jpg"))),
      pull: (controller) => {
        if (++sentParts < 5) controller.enqueue(new Uint8Array(100_000));
        else controller.error(Object.assign(new Error("aborted"), { code: "ECONNRESET" }));
      },
    });
    expect(await refusalOf(sent(body))).toEqual({ code: "EVIDENCE_CUT_OFF", details: {} });
  });

  test.each([
    ["ends in the middle of a file", stream(fileHead("cut.jpg"), 1, "")],
    ["ends in the middle of its head", `--${BOUNDARY}\r\ncontent-dispo`],
    ["is no form", "nothing of the kind"],
    ["is empty", ""],
  ])("that %s is refused", async (_, body) => {
    expect((await refusalOf(sent(body))).code).toBe("EVIDENCE_CUT_OFF");
  });

  test.each(["application/x-www-form-urlencoded", "multipart/form-data", "text/plain", ""])(
    "that is said to be %j is refused",
    async (contentType) => {
      const body = formBody([{ name: "caption", content: "x" }]);
      expect((await refusalOf(sent(body, { "content-type": contentType }))).code).toBe("EVIDENCE_CUT_OFF");
    },
  );

  test("with hundreds of fields, or one that is very long, is refused or cut", async () => {
    const many = Array.from({ length: 200 }, (_, i) => ({ name: `f${i}`, content: "x" }));
    expect((await refusalOf(sent(formBody(many)))).code).toBe("EVIDENCE_CUT_OFF");
    const long = formBody([{ name: "caption", content: "x".repeat(100_000) }]);
    const caption = await receiveFiles(sent(long), async ({ fields }) => fields.caption ?? "");
    expect(caption.length).toBeLessThanOrEqual(4_000);
  });
});
