// What every command does first, with nothing but Node: see that Node is new enough, that the packages are
// installed as the lock file says, and that the database client is generated. Nothing is done twice.
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir, userInfo } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

export const repository = join(dirname(fileURLToPath(import.meta.url)), "../../..");

/** The oldest Node that is tried. */
const OLDEST_NODE = [20, 19];
/** Longest wait for another command that installs. */
const TURN_MS = 10 * 60_000;

/** Something the user can mend; the message says how. */
export class BootstrapFault extends Error {}

function checkMachine() {
  if (process.platform === "win32") {
    throw new BootstrapFault("Trunnion is not tried on Windows itself: use the Linux subsystem (WSL).");
  }
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  if (major > OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor >= OLDEST_NODE[1])) return;
  throw new BootstrapFault(
    `Trunnion needs Node ${OLDEST_NODE.join(".")} or newer, and this is ${process.versions.node}: see https://nodejs.org`,
  );
}

function sha256(text) {
  return createHash("sha256").update(text).digest("hex");
}

function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch {
    return undefined;
  }
}

/** Whether what npm noted it has installed is what the lock file asks for. */
function agrees(lock, installed) {
  const optional = (entry) => entry.optional || entry.devOptional || entry.peer;
  return Object.entries(lock.packages).every(([path, entry]) => {
    if (path === "" || !path.includes("node_modules/")) return true;
    const there = installed.packages[path];
    if (!there) return Boolean(optional(entry));
    return entry.link ? there.link === true : there.version === entry.version;
  });
}

/** Why npm has to install; undefined when it has not. */
function installReason(lockText, stamp) {
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === sha256(lockText)) return undefined;
  const installed = readJson(join(repository, "node_modules/.package-lock.json"));
  if (!installed) return "first time: a minute or two";
  if (!agrees(JSON.parse(lockText), installed)) return "the lock file has changed";
  writeFileSync(stamp, sha256(lockText));
  return undefined;
}

/** Runs a program, ends it when this one is told to end, and resolves to its exit code and what it said. */
function run(file, args, env) {
  return new Promise((resolve) => {
    const child = spawn(file, args, {
      cwd: repository,
      env: { ...process.env, ...env },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let said = "";
    for (const stream of [child.stdout, child.stderr]) stream.on("data", (chunk) => (said += chunk));
    const stop = (signal) => {
      child.kill(signal);
      process.exit(1);
    };
    process.once("SIGINT", stop).once("SIGTERM", stop);
    const end = (code) => {
      process.off("SIGINT", stop).off("SIGTERM", stop);
      resolve({ code, said });
    };
    child.once("error", (error) => {
      said += error.message;
      end(1);
    });
    child.once("close", (code) => end(code ?? 1));
  });
}

async function install(log, reason) {
  log(`Installing packages (${reason}) …`);
  const begun = Date.now();
  const ticking = setInterval(() => log(`  … ${Math.round((Date.now() - begun) / 1000)} s`), 15_000);
  // Started by npm, it is that very npm; else the one in the path.
  const npm = process.env.npm_execpath ? [process.execPath, process.env.npm_execpath] : ["npm"];
  const [file, ...first] = npm;
  const { code, said } = await run(file, [...first, "ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    // Prisma's installer would download an engine that is not used here.
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
    CHECKPOINT_DISABLE: "1",
  });
  clearInterval(ticking);
  if (code !== 0) {
    throw new BootstrapFault(
      `${said.trim()}\nnpm ci failed: see above. Trunnion needs the npm registry once; afterwards it runs without a network.`,
    );
  }
  log(`Installed in ${Math.round((Date.now() - begun) / 1000)} s.`);
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
}

/** One command at a time installs and generates; the lock lies outside what npm ci clears away. */
async function inTurn(log, work) {
  const folder = join(tmpdir(), `trunnion-${userInfo().uid}`);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const lock = join(folder, `bootstrap-${sha256(repository).slice(0, 16)}.lock`);
  const draft = `${lock}.${process.pid}`;
  writeFileSync(draft, String(process.pid));
  const end = Date.now() + TURN_MS;
  let told = false;
  for (;;) {
    try {
      linkSync(draft, lock);
      break;
    } catch (error) {
      if (error.code !== "EEXIST") throw error;
    }
    const holder = Number(readFileSync(lock, { encoding: "utf8", flag: "a+" }));
    if (!(holder > 0 && isAlive(holder)) || Date.now() > end) rmSync(lock, { force: true });
    else if (!told) log(`Waiting for process ${holder}, which is installing …`);
    told = true;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  rmSync(draft, { force: true });
  const release = () => rmSync(lock, { force: true });
  process.once("exit", release);
  try {
    await work();
  } finally {
    process.off("exit", release);
    release();
  }
}

/**
 * @param {(line: string) => void} log told only when there is something to do
 */
export async function bootstrap(log) {
  checkMachine();
  await inTurn(log, async () => {
    const lockText = readFileSync(join(repository, "package-lock.json"), "utf8");
    const stamp = join(repository, "node_modules/.trunnion-lock");
    const reason = installReason(lockText, stamp);
    if (reason) {
      await install(log, reason);
      writeFileSync(stamp, sha256(lockText));
    }
    const generator = pathToFileURL(join(repository, "packages/db/bin/generate.mjs")).href;
    const { generate } = await import(generator);
    generate({ log });
  });
}
