import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { setImmediate } from "node:timers/promises";
import type { Worker } from "node:worker_threads";
import type { SheetModel } from "@trunnion/register";
import type { SheetsOptions } from "../draw-sheets";
import type { FormReading } from "../read/read-form";
import type { Answered, Asked } from "./job";

/** Models handed over at a time: some milliseconds of the event loop. */
const modelsAtOnce = 8;
/** Longest a job may take, milliseconds; a file made to hang its reader is given up. */
const limits = { draw: 180_000, read: 30_000 } as const;

interface Waiting {
  readonly resolve: (answered: Answered) => void;
  readonly reject: (error: Error) => void;
}

let thread: Worker | undefined;
let nextId = 1;
const waiting = new Map<number, Waiting>();

/** Asked of Node's own resolver first; a bundler gives this module an address that is on no disk. */
function workerFile(): string {
  try {
    return createRequire(import.meta.url).resolve(["@trunnion/sheets", "worker"].join("/"));
  } catch {
    for (let folder = process.cwd(); ; folder = dirname(folder)) {
      const candidate = join(folder, "packages", "sheets", "bin", "worker.mjs");
      if (existsSync(candidate)) return candidate;
      if (dirname(folder) === folder)
        throw new Error("the drawing thread's file packages/sheets/bin/worker.mjs is missing");
    }
  }
}

function started(): Worker {
  if (thread) return thread;
  // Asked of the process: a bundler would take `new Worker` apart and look for a file to pack.
  const { Worker: Thread } = process.getBuiltinModule("node:worker_threads");
  const made = new Thread(workerFile());
  made.unref();
  made.on("message", (answered: Answered) => {
    waiting.get(answered.id)?.resolve(answered);
    settled(answered.id);
  });
  made.on("error", (error) => giveUp(made, error));
  made.on("exit", () => giveUp(made, new Error("the drawing thread ended")));
  thread = made;
  return made;
}

/** The process may end while nothing is asked of the thread, and not while something is. */
function settled(id: number): void {
  waiting.delete(id);
  if (waiting.size === 0) thread?.unref();
}

function giveUp(made: Worker, error: Error): void {
  if (thread !== made) return;
  thread = undefined;
  for (const { reject } of waiting.values()) reject(error);
  waiting.clear();
}

async function ask(
  asked: Exclude<Asked, { kind: "models" }>,
  models: readonly SheetModel[] = [],
): Promise<Answered> {
  const worker = started();
  worker.ref();
  const answer = new Promise<Answered>((resolve, reject) => waiting.set(asked.id, { resolve, reject }));
  const limit = limits[asked.kind];
  const timer = setTimeout(() => {
    giveUp(worker, new Error(`${asked.kind} took longer than ${limit / 1000} s and was given up`));
    void worker.terminate();
  }, limit);
  try {
    for (let at = 0; at < models.length; at += modelsAtOnce) {
      worker.postMessage({
        id: asked.id,
        kind: "models",
        models: models.slice(at, at + modelsAtOnce),
      } satisfies Asked);
      await setImmediate();
    }
    worker.postMessage(asked);
    return await answer;
  } finally {
    clearTimeout(timer);
  }
}

/**
 * {@link drawSheets} on a thread of its own: whoever serves others goes on serving them.
 *
 * @throws RangeError as `drawSheets` does
 */
export async function drawSheetsAside(
  models: readonly SheetModel[],
  options: SheetsOptions,
): Promise<Uint8Array> {
  const answered = await ask({ id: nextId++, kind: "draw", options }, models);
  if ("bytes" in answered) return answered.bytes;
  throw wrong(answered);
}

/** {@link readSheetForm} on a thread of its own, given up after half a minute as damaged. */
export async function readSheetFormAside(bytes: Uint8Array): Promise<FormReading> {
  try {
    const answered = await ask({ id: nextId++, kind: "read", bytes });
    if ("reading" in answered) return answered.reading;
    throw wrong(answered);
  } catch (error) {
    if (error instanceof Error && error.message.includes("given up")) return { kind: "damaged" };
    throw error;
  }
}

function wrong(answered: Answered): Error {
  if (!("error" in answered))
    return new Error("the drawing thread answered something else than it was asked");
  return answered.refused ? new RangeError(answered.error) : new Error(answered.error);
}
