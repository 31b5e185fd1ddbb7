import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ClubStore, openStore } from "../store";
import { samplePicture } from "./sample/picture";
import { thumbnail, variantOf } from "./thumbnail";

let folder: string;
let ours: ClubStore;
let theirs: ClubStore;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-thumbnail-"));
  const store = await openStore({ kind: "folder", folder });
  ours = store.club("01900000-0000-7000-8000-00000000000a");
  theirs = store.club("01900000-0000-7000-8000-00000000000b");
});
afterAll(() => rm(folder, { recursive: true }));

/** A club's store that notes what is written to it. */
function noting(store: ClubStore): { readonly store: ClubStore; readonly written: string[] } {
  const written: string[] = [];
  const putVariant: ClubStore["putVariant"] = (name, content) => {
    written.push(name.variant);
    return store.putVariant(name, content);
  };
  return { written, store: { ...store, putVariant } };
}

describe("a thumbnail", () => {
  test.each([
    [0, 320, 240],
    [1, 240, 320],
    [2, 320, 240],
    [3, 240, 320],
  ] as const)("after %i quarter turns is %i by %i pixels", async (turns, width, height) => {
    const sha256 = await ours.put(await samplePicture("jpeg", { width: 800, height: 600 }));
    const made = await thumbnail(ours, { sha256, edge: 320, turns });
    expect(await sharp(made).metadata()).toMatchObject({ format: "webp", width, height });
  });

  test("turns clockwise: what was top left is top right after one turn", async () => {
    const sha256 = await ours.put(await samplePicture("png", { width: 90, height: 60, plain: true }));
    const made = await thumbnail(ours, { sha256, edge: 320, turns: 1 });
    const { data, info } = await sharp(made).raw().toBuffer({ resolveWithObject: true });
    const red = (x: number, y: number) => (data[(y * info.width + x) * info.channels] ?? 0) > 150;
    expect([info.width, info.height, red(4, 4), red(55, 4)]).toEqual([60, 90, false, true]);
  });

  test("is made once and kept, however many ask at once, and made no larger than its original", async () => {
    const sha256 = await ours.put(await samplePicture("webp", { width: 200, height: 100, seed: 9 }));
    const { store, written } = noting(ours);
    const name = { sha256, edge: 1280, turns: 0 } as const;
    const made = await Promise.all(Array.from({ length: 8 }, () => thumbnail(store, name)));
    expect(written).toEqual([variantOf(name)]);
    expect(await sharp(made[7]).metadata()).toMatchObject({ width: 200, height: 100 });
    await thumbnail(store, name);
    expect(written).toHaveLength(1);
  });

  test("says nothing of place and person, though the original is kept with it", async () => {
    const sha256 = await ours.put(await samplePicture("jpeg", { seed: 2 }));
    const { exif, xmp } = await sharp(await thumbnail(ours, { sha256, edge: 320, turns: 0 })).metadata();
    expect([exif, xmp]).toEqual([undefined, undefined]);
  });

  test("is a JPEG for what cannot take WebP, on white where it was transparent", async () => {
    const clear = await sharp({ create: { width: 40, height: 40, channels: 4, background: "#0000" } })
      .png()
      .toBuffer();
    const sha256 = await ours.put(clear);
    const made = await thumbnail(ours, { sha256, edge: 320, turns: 0, format: "jpeg" });
    expect((await sharp(made).metadata()).format).toBe("jpeg");
    expect([...(await sharp(made).raw().toBuffer()).subarray(0, 3)]).toEqual([255, 255, 255]);
  });

  test("of what is not there, or is another club's, is none", async () => {
    const sha256 = await ours.put(await samplePicture("jpeg", { seed: 5 }));
    expect(await thumbnail(theirs, { sha256, edge: 320, turns: 0 })).toBeUndefined();
    expect(await thumbnail(ours, { sha256: "a".repeat(64), edge: 320, turns: 0 })).toBeUndefined();
  });
});
