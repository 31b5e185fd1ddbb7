import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buffer } from "node:stream/consumers";
import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { writeCondition } from "@trunnion/register";
import { createSignIn, openStore, type Store } from "@trunnion/service";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { archiveFile, type ListFileRequest, listDownload } from "./export-file";
import type { Request } from "./request";

let world: World;
let store: Store;
let folder: string;
let registrar: WorldPerson;
let owner: WorldPerson;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-export-file-"));
  vi.stubEnv("TMPDIR", folder);
  world = await openWorld();
  store = await openStore({ kind: "folder", folder: join(folder, "store") });
  registrar = await world.person({ roles: ["registrar"] });
  owner = await world.person({ roles: ["owner"] });
  await world.car({ chassis: "M1-001", status: "inUse" });
  await world.car({ chassis: "M1-002" });
}, 120_000);
afterAll(async () => {
  vi.unstubAllEnvs();
  await world?.close();
  await rm(folder, { recursive: true, force: true });
});

const requestOf = (signedIn: Request["signedIn"]): Request => ({
  database: world.database,
  signIn: createSignIn(world.database, { secret: "s".repeat(40), baseUrl: "http://localhost" }),
  signedIn,
});

/** Folders that were put aside and not cleared away. */
const left = async () => (await readdir(folder)).filter((name) => name.startsWith("trunnion-aside-"));

function archive(signedIn: Request["signedIn"], failed: (error: unknown) => void = () => undefined) {
  return archiveFile(requestOf(signedIn), { club: "ours", personalData: false, store, failed });
}

function list(signedIn: Request["signedIn"], more: Partial<ListFileRequest> = {}) {
  const input = { club: "ours", list: "cars", format: "csv-plain", personalData: false, ...more } as const;
  return listDownload(requestOf(signedIn), input);
}

describe("the archive as a download", () => {
  test("is a ZIP file that comes as it is packed; what was put aside is cleared away", async () => {
    const { name, mediaType, content } = await archive(registrar);
    expect([name, mediaType]).toEqual(["ours-archive.zip", "application/zip"]);
    // PKZIP APPNOTE 4.3.7: local file header signature.
    expect((await buffer(content)).readUInt32LE(0)).toBe(0x04034b50);
    await expect.poll(left).toEqual([]);
  });

  test("given up half way is told, and cleared away", async () => {
    const failed = vi.fn();
    const { content } = await archive(registrar, failed);
    content.destroy();
    await expect.poll(() => failed.mock.calls.length).toBe(1);
    await expect.poll(left).toEqual([]);
  });

  test("is for a registrar who is signed in", async () => {
    await expect(archive(null)).rejects.toMatchObject({ code: "NOT_SIGNED_IN" });
    await expect(archive(owner)).rejects.toMatchObject({ code: "ROLE_NEEDED" });
    expect(await left()).toEqual([]);
  });
});

describe("a list as a download", () => {
  test("holds the cars that a condition finds, as the register's address has it", async () => {
    const where = writeCondition({ op: "status", in: ["inUse"] });
    const { bytes, content } = await list(owner, { where });
    const text = (await buffer(content)).toString();
    expect(text.trimEnd().split("\r\n")).toHaveLength(2);
    expect(text).toContain("M1-001");
    expect(Buffer.byteLength(text)).toBe(bytes);
    await expect.poll(left).toEqual([]);
  });

  test("with a condition that cannot be read is refused", async () => {
    await expect(list(owner, { where: "nonsense" })).rejects.toMatchObject({ code: "LIST_CONDITION" });
  });

  test("is for members, and people in it for those who may see them", async () => {
    await expect(list(null)).rejects.toMatchObject({ code: "NOT_SIGNED_IN" });
    await expect(list(owner, { club: "theirs" })).rejects.toMatchObject({ code: "NOT_A_MEMBER" });
    await expect(list(owner, { personalData: true })).rejects.toMatchObject({ code: "ROLE_NEEDED" });
    expect(await left()).toEqual([]);
  });
});
