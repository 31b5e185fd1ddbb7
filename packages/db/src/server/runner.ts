import { execFile, execFileSync, type SpawnOptions } from "node:child_process";
import { createHash } from "node:crypto";
import { chmod, chown, cp, mkdir, readFile, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { promisify } from "node:util";
import { postgresEnvironment } from "../env";
import { type Binaries, binariesIn } from "./binary";
import { EmbeddedServerError } from "./error";

const run = promisify(execFile);

/**
 * How PostgreSQL, which refuses to run as root, is run:
 * `direct` as the user we are; `namespace` as root, in a user namespace in which it is not;
 * `nobody` as root, by the user of that name, with data and programs in a folder that he can enter.
 */
export type Strategy = "direct" | "namespace" | "nobody";

/** A way of running PostgreSQL's programs, and where it needs the data to lie. */
export interface Runner {
  readonly strategy: Strategy;
  readonly binaries: Binaries;
  /** Folder for the database cluster and what only PostgreSQL reads. */
  readonly home: string;
  /** The command line and the options that run a program this way. */
  command(program: string, args: readonly string[]): { file: string; args: string[]; options: SpawnOptions };
  /** Gives a file we made to whoever PostgreSQL runs as. */
  handOver(path: string): Promise<void>;
}

const NAMESPACE = ["-U", "--map-user=1000", "--map-group=1000"];

/** Where `nobody` keeps data and programs: a folder every user can enter. */
export const SHARED_HOME = "/var/lib/trunnion";

function isRoot(): boolean {
  return process.getuid?.() === 0;
}

function ownRunner(binaries: Binaries, home: string): Runner {
  return {
    strategy: "direct",
    binaries,
    home,
    command: (file, args) => ({ file, args: [...args], options: { env: postgresEnvironment() } }),
    handOver: async () => undefined,
  };
}

/** Tries a program in a user namespace; the reason when that does not work. */
async function namespaceFault({ postgres }: Binaries): Promise<string | undefined> {
  if (process.platform !== "linux") return `there are no user namespaces on ${process.platform}`;
  try {
    await run("unshare", [...NAMESPACE, postgres, "--version"], { timeout: 20_000 });
    return undefined;
  } catch (error) {
    const { stderr, message } = error as Error & { stderr?: string };
    return (stderr?.trim() || message).split("\n")[0];
  }
}

function namespaceRunner(binaries: Binaries, home: string): Runner {
  return {
    ...ownRunner(binaries, home),
    strategy: "namespace",
    command: (program, args) => ({
      file: "unshare",
      args: [...NAMESPACE, program, ...args],
      options: { env: postgresEnvironment() },
    }),
  };
}

function idOf(option: "-u" | "-g"): number {
  return Number(execFileSync("id", [option, "nobody"], { encoding: "utf8" }));
}

/** Copies the programs where everybody may run them, whole or not at all; once per version. */
async function sharedBinaries(installed: Binaries): Promise<Binaries> {
  const { version } = JSON.parse(await readFile(join(installed.folder, "..", "package.json"), "utf8")) as {
    version: string;
  };
  const target = join(SHARED_HOME, `programs-${version}-${process.arch}`);
  if (!(await stat(target).catch(() => undefined))) {
    const draft = `${target}.${process.pid}`;
    await cp(installed.folder, draft, { recursive: true, verbatimSymlinks: true });
    await run("chmod", ["-R", "a+rX", draft]);
    await rename(draft, target).catch(() => rm(draft, { recursive: true, force: true }));
  }
  return binariesIn(target);
}

async function nobodyRunner(installed: Binaries, dataFolder: string): Promise<Runner> {
  const [uid, gid] = [idOf("-u"), idOf("-g")];
  await mkdir(SHARED_HOME, { recursive: true });
  await chmod(SHARED_HOME, 0o755);
  const key = createHash("sha256").update(dataFolder).digest("hex").slice(0, 12);
  const home = join(
    await realpath(SHARED_HOME),
    `${basename(dirname(dataFolder)).replaceAll(/[^\w-]/g, "")}-${key}`,
  );
  await mkdir(home, { recursive: true, mode: 0o700 });
  await chown(home, uid, gid);
  const binaries = await sharedBinaries(installed);
  return {
    strategy: "nobody",
    binaries,
    home,
    command: (file, args) => ({
      file,
      args: [...args],
      options: { uid, gid, cwd: home, env: { ...postgresEnvironment(), HOME: home } },
    }),
    handOver: (path) => chown(path, uid, gid),
  };
}

interface Choice {
  readonly dataFolder: string;
  readonly binaries: Binaries;
  /** What was chosen when the data was made: it can be read in no other way. */
  readonly kept: Strategy | undefined;
  /** What to use for new data, instead of trying. */
  readonly wished: Strategy | undefined;
  readonly log: (line: string) => void;
}

const ELSEWHERE = "or give another folder in TRUNNION_DATA";

function ordinaryRunner({ dataFolder, binaries, kept, wished }: Choice): Runner {
  const strategy = kept ?? wished ?? "direct";
  if (strategy === "direct") return ownRunner(binaries, dataFolder);
  throw new EmbeddedServerError(
    `the data in ${dataFolder} is root's (run by way of "${strategy}"), and this is an ordinary user; run as root, ${ELSEWHERE}`,
  );
}

async function rootRunner({ dataFolder, binaries, kept, wished, log }: Choice): Promise<Runner> {
  const strategy = kept ?? wished;
  if (strategy === "direct") {
    throw new EmbeddedServerError(
      `PostgreSQL refuses to run as root, and the data in ${dataFolder} is an ordinary user's; run as that user, ${ELSEWHERE}`,
    );
  }
  if (strategy !== "nobody") {
    const fault = await namespaceFault(binaries);
    if (fault === undefined) return namespaceRunner(binaries, dataFolder);
    if (strategy === "namespace") {
      throw new EmbeddedServerError(
        `the data in ${dataFolder} was made in a user namespace, and none can be had now (${fault}); allow user namespaces again, ${ELSEWHERE}`,
      );
    }
    log(
      `User namespaces are closed here (${fault}): PostgreSQL, which refuses to run as root, runs as nobody.`,
    );
  }
  const runner = await nobodyRunner(binaries, dataFolder);
  // Said once: on later starts the folder's own record leads there.
  if (kept === undefined)
    log(`PostgreSQL's data is in ${runner.home}, its programs in ${runner.binaries.folder}.`);
  return runner;
}

/**
 * Chooses how to run PostgreSQL here, by trying.
 *
 * @throws EmbeddedServerError when the way asked for does not work here
 */
export function chooseRunner(choice: Choice): Promise<Runner> {
  return isRoot() ? rootRunner(choice) : Promise.resolve(choice).then(ordinaryRunner);
}
