import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readBounded, requireWritable, writeOutput } from "./file";

let folder = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-file-"));
  await writeFile(join(folder, "ten"), "0123456789");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe("a file read", () => {
  test("of the limit is read whole, one of a byte more is refused by its size", async () => {
    expect(Buffer.from(await readBounded(join(folder, "ten"), 10)).toString()).toBe("0123456789");
    await expect(readBounded(join(folder, "ten"), 9)).rejects.toMatchObject({
      code: "FILE_TOO_LARGE",
      details: { file: "ten", bytes: 10, limit: 9 },
    });
  });

  test.each(["missing.csv", ".", "ten/cars.csv"])(
    "that is no file (%s) is refused by its path",
    async (name) => {
      const path = join(folder, name);
      await expect(readBounded(path, 9)).rejects.toMatchObject({ code: "FILE_NOT_FOUND", details: { path } });
    },
  );

  test("that never ends is refused, since it is no file", async () => {
    await expect(readBounded("/dev/zero", 9)).rejects.toMatchObject({ code: "FILE_NOT_FOUND" });
  });
});

describe("a file written", () => {
  test.each([
    ["nowhere/pack.pdf", /pack\.pdf cannot be written: there is no such folder\.$/],
    ["ten/pack.pdf", /cannot be written: a part of that path is no folder\.$/],
    [".", /cannot be written: that is a folder\.$/],
  ])("as %s is refused before and when it is written", async (name, words) => {
    const path = join(folder, name);
    await expect(requireWritable(path)).rejects.toThrow(words);
    await expect(writeOutput(path, new Uint8Array(1))).rejects.toThrow(words);
  });

  test("is there afterwards, also in place of another", async () => {
    const path = join(folder, "pack.pdf");
    for (const text of ["first", "second"]) {
      await requireWritable(path);
      await writeOutput(path, new TextEncoder().encode(text));
    }
    expect(await readFile(path, "utf8")).toBe("second");
  });
});
