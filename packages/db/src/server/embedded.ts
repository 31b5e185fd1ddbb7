import { chmod, mkdir, readFile, realpath, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { installedBinaries } from "./binary";
import { DATABASE, ensureCluster, ownerPassword } from "./cluster";
import { EmbeddedServerError } from "./error";
import { countHolders, forgetHolders, hold, letGo } from "./holder";
import { withLock } from "./lock";
import {
  findRunning,
  type Postmaster,
  startPostmaster,
  stopPostmaster,
  urlOf,
  withClient,
} from "./postmaster";
import { chooseRunner, type Runner, type Strategy } from "./runner";

/** What to open. */
export interface OpenEmbeddedInput {
  /** Folder for the data, its password and its log; made if it is not there. */
  readonly dataFolder: string;
  /** Told, a line at a time, what takes long or is out of the ordinary. */
  readonly log?: (line: string) => void;
  /** For tests: nothing is forced to the disk, and closing deletes the data. */
  readonly throwaway?: boolean;
  /** How to run it on new data, instead of trying what works. */
  readonly strategy?: Strategy;
}

/** An embedded server in use. */
export interface EmbeddedServer {
  /** Connection of the role that owns the database. */
  readonly ownerUrl: string;
  /** How it is run here. */
  readonly strategy: Strategy;
  /** Whether it ran already. */
  readonly reused: boolean;
  /** Lets go of it; the last one to do so stops it. */
  close(): Promise<void>;
}

/** What a data folder remembers of the server it belongs to. */
interface Record {
  readonly strategy?: Strategy;
  readonly port?: number;
}

async function readRecord(path: string): Promise<Record> {
  return JSON.parse(await readFile(path, "utf8").catch(() => "{}")) as Record;
}

async function ensureDatabase(server: Postmaster, password: string): Promise<void> {
  await withClient(urlOf(server, password, "postgres"), async (client) => {
    const { rowCount } = await client.query("SELECT FROM pg_database WHERE datname = $1", [DATABASE]);
    if (rowCount === 0) await client.query(`CREATE DATABASE ${DATABASE}`);
  });
}

async function ensureFolder(path: string): Promise<string> {
  try {
    await mkdir(path, { recursive: true });
    const folder = await realpath(path);
    await chmod(folder, 0o700);
    return folder;
  } catch (error) {
    throw new EmbeddedServerError(
      `the data folder ${path} cannot be used (${(error as Error).message}); give one of your own in TRUNNION_DATA`,
    );
  }
}

interface Opened {
  readonly runner: Runner;
  readonly server: Postmaster;
  readonly password: string;
  readonly reused: boolean;
}

async function open(
  folder: string,
  { log = () => undefined, throwaway = false, strategy }: OpenEmbeddedInput,
): Promise<Opened> {
  const recordFile = join(folder, "server.json");
  const record = await readRecord(recordFile);
  const runner = await chooseRunner({
    dataFolder: folder,
    binaries: await installedBinaries(),
    kept: record.strategy,
    wished: strategy,
    log,
  });
  const password = await ownerPassword(folder);
  if (record.strategy === undefined)
    log(`Making a PostgreSQL database in ${runner.home} (a few seconds, once).`);
  const cluster = await ensureCluster(runner, password, !throwaway);
  const found = await findRunning(cluster, password);
  const logFile = join(folder, "postgres.log");
  const starting = { runner, cluster, password, logFile, port: record.port ?? 0, durable: !throwaway };
  const server = found ?? (await startPostmaster(starting));
  await ensureDatabase(server, password);
  const kept: Record = { strategy: runner.strategy, port: server.port };
  await writeFile(recordFile, JSON.stringify(kept), { mode: 0o600 });
  return { runner, server, password, reused: found !== undefined };
}

/**
 * Opens the embedded PostgreSQL of a data folder: makes the data on the first call, starts the server or
 * joins the one that runs for this folder already, whoever started it, and recovers from a killed one.
 * It listens on the loopback interface only, on a free port, and asks for a password kept beside the data.
 *
 * @throws EmbeddedServerError saying what is wrong, where, and what to do
 */
export async function openEmbedded(input: OpenEmbeddedInput): Promise<EmbeddedServer> {
  const folder = await ensureFolder(input.dataFolder);
  const lock = join(folder, "server.lock");
  const { opened, note } = await withLock(lock, async () => ({
    opened: await open(folder, input),
    note: await hold(folder),
  }));
  const close = async () => {
    await withLock(lock, async () => {
      await letGo(note);
      if ((await countHolders(folder)).running > 0) return;
      await stopPostmaster(opened.server);
      await forgetHolders(folder);
    });
    if (!input.throwaway) return;
    await rm(opened.runner.home, { recursive: true, force: true });
    await rm(folder, { recursive: true, force: true });
  };
  let closing: Promise<void> | undefined;
  return {
    ownerUrl: urlOf(opened.server, opened.password),
    strategy: opened.runner.strategy,
    reused: opened.reused,
    close: () => {
      closing ??= close();
      return closing;
    },
  };
}
