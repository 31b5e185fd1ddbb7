import { mkdtemp, readdir, rm, stat, utimes } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { openAside } from "./aside-folder";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-aside-test-"));
  vi.stubEnv("TMPDIR", folder);
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await rm(folder, { recursive: true, force: true });
});

describe("a folder put aside", () => {
  test("can be looked into by its owner only, and is gone when it is given up", async () => {
    const { path, discard } = await openAside();
    expect((await stat(path)).mode & 0o777).toBe(0o700);
    await discard();
    expect(await readdir(folder)).toEqual([]);
  });

  test("that a killed program left is cleared away after a day, and not before", async () => {
    const [old, young] = [await openAside(), await openAside()];
    const yesterday = new Date(Date.now() - 25 * 3_600_000);
    await utimes(old.path, yesterday, yesterday);
    const now = await openAside();
    const names = (await readdir(folder)).map((name) => join(folder, name));
    expect(names.sort()).toEqual([young.path, now.path].sort());
  });
});
