import { mkdtemp, readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { OutputFault } from "./file";
import { requireNew, writeNew } from "./new-file";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-new-file-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const filling = (text: string) => (output: NodeJS.WritableStream) => pipeline(Readable.from([text]), output);

describe("a new file", () => {
  test.each([
    [true, 0o600],
    [false, 0o644],
  ])("that is secret: %s, has mode %o", async (secret, mode) => {
    const path = join(folder, "a.zip");
    expect(await writeNew({ path, force: false, secret }, filling("abc"))).toBe(3);
    expect((await stat(path)).mode & 0o777 & ~process.umask()).toBe(mode & ~process.umask());
    expect(await readFile(path, "utf8")).toBe("abc");
  });

  test("does not replace another without being told to", async () => {
    const path = join(folder, "a.zip");
    await writeFile(path, "mine");
    await expect(requireNew({ path, force: false })).rejects.toThrow(/is there already.*--force/);
    await expect(writeNew({ path, force: false, secret: true }, filling("x"))).rejects.toBeInstanceOf(
      OutputFault,
    );
    expect(await readFile(path, "utf8")).toBe("mine");
    await writeNew({ path, force: true, secret: true }, filling("theirs"));
    expect(await readFile(path, "utf8")).toBe("theirs");
  });

  test("that cannot be finished leaves nothing, and what was there", async () => {
    const path = join(folder, "a.zip");
    await writeFile(path, "mine");
    const cut = async (output: NodeJS.WritableStream) => {
      output.write("half");
      throw new Error("the well ran dry");
    };
    await expect(writeNew({ path, force: true, secret: true }, cut)).rejects.toThrow("the well ran dry");
    expect(await readdir(folder)).toEqual(["a.zip"]);
    expect(await readFile(path, "utf8")).toBe("mine");
  });

  test("in a folder that is none is refused before anything is done", async () => {
    await expect(requireNew({ path: join(folder, "none", "a.zip"), force: true })).rejects.toThrow(
      /no such folder/,
    );
  });
});
