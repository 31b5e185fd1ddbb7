import { Refusal } from "@trunnion/register";
import fc from "fast-check";
import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { prepareFile } from "./prepare";
import { blackPng, SECRET, samplePdf, samplePicture } from "./sample/picture";

const formats = ["jpeg", "png", "webp", "avif", "tiff"] as const;

const prepare = (content: Buffer, name = "bar.jpg", keepLocation = false) =>
  prepareFile({ name, content, keepLocation });

/** The code and details of a refusal; fails where there is none. */
async function refusalOf(work: Promise<unknown>): Promise<Pick<Refusal, "code" | "details">> {
  const caught = await work.then(
    () => undefined,
    (error: unknown) => error,
  );
  if (!(caught instanceof Refusal)) throw new Error(`no refusal: ${String(caught)}`);
  return { code: caught.code, details: caught.details };
}

const decoded = (content: Buffer) => sharp(content).raw().toBuffer();

describe.each(formats)("a picture in %s", (format) => {
  test("keeps every pixel and its turn, and says nothing any more of who, where and when", async () => {
    const given = await samplePicture(format, { orientation: format === "avif" ? 1 : 6 });
    expect(given.includes(SECRET), "the sample says it").toBe(true);
    const kept = await prepare(given);
    expect(kept.content.includes(SECRET)).toBe(false);
    expect(kept.content.includes("Kjeldmo")).toBe(false);
    const { xmp, iptc, orientation = 1 } = await sharp(kept.content).metadata();
    expect([xmp?.some((byte) => byte !== 0) ?? false, iptc, orientation]).toEqual([false, undefined, 1]);
    expect(Buffer.compare(await decoded(kept.content), await decoded(given))).toBe(0);
    expect(kept).toMatchObject({
      mediaType: `image/${format}`,
      width: 96,
      height: 64,
      quarterTurns: format === "avif" ? 0 : 1,
      taken: "2019-06-01",
      keepsLocation: false,
    });
  });

  test("is the same file whoever took it: what is said in it is not part of it", async () => {
    const said = await prepare(await samplePicture(format, { seed: 3 }));
    const again = await prepare(said.content);
    expect(again.sha256).toBe(said.sha256);
    expect((await prepare(await samplePicture(format, { seed: 4 }))).sha256).not.toBe(said.sha256);
  });

  test("is kept to the byte where its place is asked to stay", async () => {
    const given = await samplePicture(format);
    const kept = await prepare(given, "bar", true);
    expect(Buffer.compare(kept.content, given)).toBe(0);
    expect(kept.keepsLocation).toBe(true);
  });

  test("that ends in the middle is refused", async () => {
    const given = await samplePicture(format, { plain: true, width: 400, height: 300 });
    for (const part of [0.3, 0.6, 0.9]) {
      const cut = given.subarray(0, Math.floor(given.length * part));
      const { code } = await refusalOf(prepare(cut));
      expect(code).toBe("EVIDENCE_BROKEN");
    }
  });

  test("in which bytes are changed is taken or refused, and never a fault", async () => {
    const given = await samplePicture(format, { width: 24, height: 16 });
    const change = fc.record({ at: fc.nat(given.length - 1), to: fc.nat(255) });
    await fc.assert(
      fc.asyncProperty(
        fc.array(change, { minLength: 1, maxLength: 6 }),
        fc.nat(given.length),
        async (changes, cut) => {
          const changed = Buffer.from(given);
          for (const { at, to } of changes) changed[at] = to;
          for (const content of [changed, changed.subarray(0, cut)]) {
            const outcome = await prepare(content).catch((error: unknown) => error);
            if (outcome instanceof Error) expect(outcome).toBeInstanceOf(Refusal);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

test("a mirrored picture, which no turn can put right, is put right itself", async () => {
  const given = await samplePicture("jpeg", { orientation: 2 });
  const kept = await prepare(given);
  expect(kept).toMatchObject({ quarterTurns: 0, width: 96, height: 64, taken: "2019-06-01" });
  expect(kept.content.includes(SECRET)).toBe(false);
  const { data, info } = await sharp(kept.content).raw().toBuffer({ resolveWithObject: true });
  // The red corner, top left as coded, is top right as seen.
  const at = (x: number, y: number) => data[(y * info.width + x) * info.channels] ?? 0;
  expect([at(5, 5) > 150, at(90, 5) > 150]).toEqual([false, true]);
});

test("a picture taller than it is wide as seen has its preview upright", async () => {
  const { preview } = await prepare(await samplePicture("jpeg", { width: 400, height: 200, orientation: 6 }));
  expect(await sharp(preview).metadata()).toMatchObject({ format: "webp", width: 160, height: 320 });
});

test("what follows the end of a picture is not kept", async () => {
  for (const format of ["jpeg", "png", "webp"] as const) {
    const given = await samplePicture(format, { plain: true });
    const kept = await prepare(Buffer.concat([given, Buffer.from(`PK\u0003\u0004${SECRET}`)]));
    expect(kept.content.includes(SECRET), format).toBe(false);
    expect(kept.sha256).toBe((await prepare(given)).sha256);
  }
});

test("a colour profile stays: without it the colours would be others", async () => {
  const given = await sharp(await samplePicture("png", { plain: true }))
    .withIccProfile("p3")
    .jpeg()
    .toBuffer();
  const { icc } = await sharp((await prepare(given)).content).metadata();
  expect(icc?.length).toBeGreaterThan(100);
});

test("several pages of a scan stay, each with its own compression", async () => {
  const one = await samplePicture("tiff", { plain: true });
  const kept = await prepare(one);
  expect(kept.mediaType).toBe("image/tiff");
  expect((await sharp(kept.content).metadata()).compression).toBe((await sharp(one).metadata()).compression);
});

describe("what is no photo or document", () => {
  const html = "<!DOCTYPE html><html><script>alert(1)</script></html>";
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><rect width="9" height="9"/></svg>';

  test.each([
    [html, "an HTML page"],
    [`\u00EF\u00BB\u00BF  ${html}`, "an HTML page"],
    [`<!-- x --><p>hello`, "an HTML page"],
    [svg, "an SVG drawing"],
    [`<?xml version="1.0"?>\n<!-- made -->\n${svg}`, "an SVG drawing"],
    ["<?xml version='1.0'?><a/>", "XML"],
    ["chassis;series\nM1-001;1", "text"],
    ["\u0001\u0002\u0000\u0003", "of no known kind"],
    ["", "nothing: the file is empty"],
    ["GIF89a\u0001\u0000\u0001\u0000\u0000\u0000\u0000;", "image/gif"],
    ["PK\u0003\u0004".padEnd(40, "\0"), "application/zip"],
    ["MZ".padEnd(80, "\0"), "application/x-msdownload"],
    ["%!PS-Adobe-3.0\n", "application/postscript"],
  ])("is refused by its content, whatever its name says: %j", async (content, found) => {
    const refusal = await refusalOf(prepare(Buffer.from(content, "latin1"), "photo.jpg"));
    expect(refusal).toEqual({ code: "EVIDENCE_NO_PICTURE", details: { file: "photo.jpg", found } });
  });

  test("is refused where it only begins as a picture", async () => {
    for (const head of ["ffd8ffe0", "89504e470d0a1a0a0000000d49484452"]) {
      const dressed = Buffer.concat([Buffer.from(head, "hex"), Buffer.from(html)]);
      expect(await refusalOf(prepare(dressed, "photo.jpg"))).toMatchObject({ code: "EVIDENCE_BROKEN" });
    }
  });

  test("is HEIC, told by name", async () => {
    const heic = Buffer.from(`\0\0\0\u0018ftypheic\0\0\0\0mif1heic`.padEnd(200, "\0"), "latin1");
    expect(await refusalOf(prepare(heic, "IMG_1.HEIC"))).toEqual({
      code: "EVIDENCE_HEIC",
      details: { file: "IMG_1.HEIC" },
    });
  });
});

describe("a decompression bomb", () => {
  test("is refused by the size its head claims, before it is decoded", async () => {
    const bomb = blackPng(30_000, 30_000);
    expect(bomb.length).toBeLessThan(200_000);
    const began = performance.now();
    expect(await refusalOf(prepare(bomb, "bomb.png"))).toEqual({
      code: "EVIDENCE_TOO_MANY_PIXELS",
      details: { file: "bomb.png", width: 30_000, height: 30_000, limit: 60_000_000 },
    });
    // Decoded it would be 900 million pixels: seconds, and gigabytes.
    expect(performance.now() - began).toBeLessThan(1_000);
  });

  test("is refused by what it holds where its head lies", async () => {
    const liar = blackPng(8_000, 8_000);
    liar.writeUInt32BE(8, 16);
    expect(await refusalOf(prepare(liar, "liar.png"))).toMatchObject({ code: "EVIDENCE_BROKEN" });
  });

  test("is no picture of just so many pixels as are taken", async () => {
    expect(await prepare(blackPng(10_000, 6_000))).toMatchObject({ width: 10_000, height: 6_000 });
    expect(await refusalOf(prepare(blackPng(10_000, 6_001)))).toMatchObject({
      code: "EVIDENCE_TOO_MANY_PIXELS",
    });
  });
});

describe("a document", () => {
  test("is kept to the byte, scripts and all: it is never shown, only handed out", async () => {
    const given = samplePdf();
    const kept = await prepare(given, "letter.pdf", true);
    expect(Buffer.compare(kept.content, given)).toBe(0);
    expect(kept).toMatchObject({
      mediaType: "application/pdf",
      fileName: "letter.pdf",
      keepsLocation: false,
    });
    expect(kept.width).toBeUndefined();
    expect(kept.preview).toBeUndefined();
  });

  test("that ends in the middle is refused", async () => {
    expect(await refusalOf(prepare(samplePdf().subarray(0, 300), "letter.pdf"))).toMatchObject({
      code: "EVIDENCE_BROKEN",
      details: { problem: "it ends before its table of contents" },
    });
  });
});

test("more than 40 MB is refused with the figures", async () => {
  expect(await refusalOf(prepare(Buffer.alloc(40_000_001), "x".repeat(4_000)))).toEqual({
    code: "EVIDENCE_TOO_LARGE",
    details: { file: `${"x".repeat(59)}…`, bytes: 40_000_001, limit: 40_000_000 },
  });
});

test.each([
  ["0000:00:00 00:00:00", undefined],
  ["2019:02:30 00:00:00", undefined],
  ["2019:06:01 23:59:59", "2019-06-01"],
  ["yesterday", undefined],
])("a camera that says %j took it on %j", async (said, day) => {
  const picture = sharp(await samplePicture("png", { plain: true })).withExif({
    IFD2: { DateTimeOriginal: said },
  });
  expect((await prepare(await picture.jpeg().toBuffer())).taken).toBe(day);
});
