import { spawn } from "node:child_process";
import { open, readFile } from "node:fs/promises";
import { endProcess, markOf, type ProcessMark } from "@trunnion/db/admin";
import { childEnvironment } from "./env";
import { StartFault } from "./fault";
import { repository } from "./place";

/** Longest a program is given to end before it is killed. */
const STOP_MS = 10_000;

/** A program that was started from here. */
export interface Program {
  readonly mark: ProcessMark;
  /** Resolves to the exit code, once it has ended. */
  readonly ended: Promise<number>;
  /** Ends it and what it has started. */
  stop(): Promise<void>;
}

/** What to run. */
export interface ProgramInput {
  /** A Node script and its arguments. */
  readonly command: readonly string[];
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** File that takes what it prints; this terminal when left out. */
  readonly logFile?: string;
}

/** Ends a program, and all in its process group, whoever started it. */
export function stopProgram(mark: ProcessMark): Promise<void> {
  return endProcess(mark, { signal: "SIGTERM", forMs: STOP_MS, group: true });
}

/**
 * Starts a Node script in a process group of its own: Ctrl-C reaches only us, and we end it in order.
 *
 * @throws StartFault when it cannot be started at all
 */
export async function startProgram({
  command,
  cwd = repository,
  env,
  logFile,
}: ProgramInput): Promise<Program> {
  const log = logFile === undefined ? undefined : await open(logFile, "w", 0o600);
  const output = log?.fd ?? "inherit";
  const child = spawn(process.execPath, command, {
    cwd,
    env: childEnvironment(env),
    detached: true,
    stdio: ["ignore", output, output],
  });
  const ended = new Promise<number>((resolve) => {
    child.once("exit", (code) => resolve(code ?? 1));
    child.once("error", () => resolve(127));
  });
  await log?.close();
  const mark = child.pid === undefined ? undefined : markOf(child.pid);
  // Already over: nothing is left to stop.
  if (!mark && child.pid !== undefined) {
    return { mark: { pid: child.pid, started: "over" }, ended, stop: async () => undefined };
  }
  if (!mark) throw new StartFault(`${command[0]} could not be started: Node answered ${await ended}`);
  return { mark, ended, stop: () => stopProgram(mark) };
}

/** The end of what a program printed. */
export async function lastLines(path: string, count = 25): Promise<string> {
  return (await readFile(path, "utf8").catch(() => "")).trimEnd().split("\n").slice(-count).join("\n");
}
