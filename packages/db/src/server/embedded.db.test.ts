import { spawn } from "node:child_process";
import { once } from "node:events";
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, test } from "vitest";
import { openEmbedded } from "./embedded";
import { withClient } from "./postmaster";
import { copyPristine } from "./pristine";
import { markOf, waitUntil } from "./process";
import type { Strategy } from "./runner";
import { openThrowaway } from "./throwaway";

const isRoot = process.getuid?.() === 0;
const NOBODY = 65_534;
const here = dirname(fileURLToPath(import.meta.url));
const made: string[] = [];

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "trunnion-embedded-test-"));
  made.push(folder);
  return folder;
}

/** A folder with data from before: what follows does not depend on making it. */
async function usedFolder(): Promise<string> {
  const folder = newFolder();
  await copyPristine(folder);
  return folder;
}

afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

async function ask(url: string, sql: string): Promise<unknown> {
  return withClient(
    url,
    async (client) => Object.values((await client.query({ text: sql })).rows[0] ?? {})[0],
  );
}

function postmasterPid(cluster: string): number {
  return Number(readFileSync(join(cluster, "postmaster.pid"), "utf8").split("\n")[0]);
}

/** Opens in a process of its own; resolves to what it says once the server answers. */
async function openElsewhere(dataFolder: string, uid?: number) {
  const child = spawn(process.execPath, ["--import", "tsx", join(here, "open-and-wait.ts"), dataFolder], {
    cwd: here,
    stdio: ["ignore", "pipe", "inherit"],
    ...(uid !== undefined && { uid, gid: uid }),
  });
  const [line] = (await once(child.stdout, "data")) as [Buffer];
  const { ownerUrl, strategy } = JSON.parse(line.toString()) as { ownerUrl: string; strategy: Strategy };
  const kill = async () => {
    child.kill("SIGKILL");
    await once(child, "exit");
  };
  return { ownerUrl, strategy, kill };
}

describe("the embedded server", { timeout: 120_000 }, () => {
  test("makes the data once, starts, answers, stops, and keeps what was written", async () => {
    const dataFolder = newFolder();
    const first = await openEmbedded({ dataFolder });
    await ask(first.ownerUrl, "CREATE TABLE kept AS SELECT 'Sandvær' AS name");
    const pid = postmasterPid(join(dataFolder, "postgres"));
    await first.close();
    expect(markOf(pid)).toBeUndefined();
    const second = await openEmbedded({ dataFolder });
    expect(await ask(second.ownerUrl, "SELECT name FROM kept")).toBe("Sandvær");
    expect(second.ownerUrl).toBe(first.ownerUrl);
    await second.close();
  });

  test("listens on the loopback interface only, asks for a password, and keeps it to its owner", async () => {
    const dataFolder = newFolder();
    const server = await openEmbedded({ dataFolder });
    expect(await ask(server.ownerUrl, "SHOW listen_addresses")).toBe("127.0.0.1");
    expect(await ask(server.ownerUrl, "SHOW fsync")).toBe("on");
    expect(statSync(join(dataFolder, "owner-password")).mode & 0o777).toBe(0o600);
    expect(statSync(dataFolder).mode & 0o777).toBe(0o700);
    const wrong = new URL(server.ownerUrl);
    wrong.password = "guess";
    await expect(ask(wrong.toString(), "SELECT 1")).rejects.toThrow(/password authentication failed/);
    await server.close();
  });

  test("folds capitals beyond ASCII whatever the machine's locale is", async () => {
    const server = await openThrowaway();
    expect(await ask(server.ownerUrl, "SELECT 'GRÜNÅS ÆRØ' ILIKE 'grünås ærø'")).toBe(true);
    await server.close();
  });

  test("a throwaway one forces nothing to the disk and leaves nothing behind", async () => {
    const dataFolder = await usedFolder();
    const server = await openEmbedded({ dataFolder, throwaway: true });
    expect(await ask(server.ownerUrl, "SHOW fsync")).toBe("off");
    await server.close();
    expect(existsSync(dataFolder)).toBe(false);
  });

  test("is joined by a second caller, and stops when the last one lets go", async () => {
    const dataFolder = await usedFolder();
    const [first, second] = await Promise.all([openEmbedded({ dataFolder }), openEmbedded({ dataFolder })]);
    expect([first.reused, second.reused].sort()).toEqual([false, true]);
    const pid = postmasterPid(join(dataFolder, "postgres"));
    await first.close();
    await first.close();
    expect(await ask(second.ownerUrl, "SELECT 1")).toBe(1);
    await second.close();
    expect(markOf(pid)).toBeUndefined();
  });

  test("whose caller was killed is joined by the next one, who then stops it", async () => {
    const dataFolder = await usedFolder();
    const killed = await openElsewhere(dataFolder);
    await killed.kill();
    const pid = postmasterPid(join(dataFolder, "postgres"));
    const server = await openEmbedded({ dataFolder });
    expect(server).toMatchObject({ reused: true, ownerUrl: killed.ownerUrl });
    await server.close();
    expect(markOf(pid)).toBeUndefined();
  });

  test("is not stopped under another process that still uses it", async () => {
    const dataFolder = await usedFolder();
    const other = await openElsewhere(dataFolder);
    const server = await openEmbedded({ dataFolder });
    await server.close();
    expect(await ask(other.ownerUrl, "SELECT 1")).toBe(1);
    await other.kill();
    await (await openEmbedded({ dataFolder })).close();
  });

  test("that was itself killed is started anew, with what was committed", async () => {
    const dataFolder = await usedFolder();
    const first = await openEmbedded({ dataFolder });
    await ask(first.ownerUrl, "CREATE TABLE kept AS SELECT 7 AS n");
    process.kill(postmasterPid(join(dataFolder, "postgres")), "SIGKILL");
    const second = await openEmbedded({ dataFolder });
    expect(second.reused).toBe(false);
    expect(await ask(second.ownerUrl, "SELECT n FROM kept")).toBe(7);
    await first.close();
    await second.close();
  });

  test("is not put off by a stale postmaster.pid whose number another process has now", async () => {
    const dataFolder = await usedFolder();
    await (await openEmbedded({ dataFolder })).close();
    const pidFile = join(dataFolder, "postgres", "postmaster.pid");
    writeFileSync(pidFile, `${process.pid}\n${join(dataFolder, "postgres")}\n1\n5432\n\n127.0.0.1\n`, {
      mode: 0o600,
    });
    const server = await openEmbedded({ dataFolder });
    expect(await ask(server.ownerUrl, "SELECT 1")).toBe(1);
    await server.close();
  });

  test("begins again where making the data was cut off", async () => {
    const dataFolder = newFolder();
    mkdirSync(join(dataFolder, "postgres.new", "base"), { recursive: true });
    const server = await openEmbedded({ dataFolder });
    expect(await ask(server.ownerUrl, "SELECT 1")).toBe(1);
    await server.close();
    expect(existsSync(join(dataFolder, "postgres.new"))).toBe(false);
  });

  test("touches no folder of somebody else's that has the name of its data", async () => {
    const dataFolder = newFolder();
    mkdirSync(join(dataFolder, "postgres", "photographs"), { recursive: true });
    await expect(openEmbedded({ dataFolder })).rejects.toThrow(
      /postgres is there already and holds no PostgreSQL data/,
    );
  });

  test("names the folder and both versions when the data is of another PostgreSQL", async () => {
    const dataFolder = await usedFolder();
    await (await openEmbedded({ dataFolder })).close();
    writeFileSync(join(dataFolder, "postgres", "PG_VERSION"), "17\n");
    await expect(openEmbedded({ dataFolder })).rejects.toThrow(
      /postgres holds data of PostgreSQL 17, and this is PostgreSQL 18/,
    );
  });

  test("throwaway servers left behind by killed callers are ended by the next one", async () => {
    const dataFolder = mkdtempSync(join(tmpdir(), "trunnion-throwaway-"));
    await copyPristine(dataFolder);
    const killed = await openElsewhere(dataFolder);
    const pid = postmasterPid(join(dataFolder, "postgres"));
    await killed.kill();
    await (await openThrowaway()).close();
    expect(await waitUntil(() => markOf(pid) === undefined, { forMs: 5_000 })).toBe(true);
    expect(existsSync(dataFolder)).toBe(false);
  });
});

describe.skipIf(!isRoot || process.platform !== "linux")("as root", { timeout: 120_000 }, () => {
  test.each<Strategy>(["namespace", "nobody"])("runs by way of %s, again too", async (strategy) => {
    const dataFolder = newFolder();
    const lines: string[] = [];
    const first = await openEmbedded({
      dataFolder,
      strategy,
      log: (line) => lines.push(line),
      throwaway: false,
    });
    expect(first.strategy).toBe(strategy);
    await ask(first.ownerUrl, "CREATE TABLE kept AS SELECT 5 AS n");
    await first.close();
    // The way is kept with the data: nothing has to be asked for the second time.
    const second = await openEmbedded({ dataFolder, throwaway: true });
    expect(second.strategy).toBe(strategy);
    expect(await ask(second.ownerUrl, "SELECT n FROM kept")).toBe(5);
    await second.close();
    expect(lines.some((line) => line.includes("/var/lib/trunnion/"))).toBe(strategy === "nobody");
  });

  test("by way of nobody the server's process is not root's, and the data lies where he can enter", async () => {
    const dataFolder = newFolder();
    const server = await openEmbedded({ dataFolder, strategy: "nobody", throwaway: true });
    const cluster = String(await ask(server.ownerUrl, "SHOW data_directory"));
    expect(cluster.startsWith("/var/lib/trunnion/")).toBe(true);
    expect(statSync(cluster).uid).not.toBe(0);
    await server.close();
    expect(existsSync(cluster)).toBe(false);
  });

  test("an ordinary user runs it directly, and root is told whose the data is", async () => {
    const dataFolder = newFolder();
    chownSync(dataFolder, NOBODY, NOBODY);
    chmodSync(dataFolder, 0o700);
    const other = await openElsewhere(dataFolder, NOBODY);
    expect(other.strategy).toBe("direct");
    expect(await ask(other.ownerUrl, "SELECT 1")).toBe(1);
    await expect(openEmbedded({ dataFolder })).rejects.toThrow(/ordinary user's; run as that user/);
    process.kill(postmasterPid(join(dataFolder, "postgres")), "SIGINT");
    await other.kill();
  });
});
