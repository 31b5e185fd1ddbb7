import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";

/** A process that can be told from a later one with the same number. */
export interface ProcessMark {
  readonly pid: number;
  /** When it was started, as the operating system counts; empty where that cannot be learnt. */
  readonly started: string;
}

function linuxStart(pid: number): string | undefined {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    // The name, in brackets, may itself hold spaces and brackets: fields are counted from the last one.
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    const [state, started] = [fields[0], fields[19]];
    // A zombie has ended; where process 1 does not collect orphans it stays listed for ever.
    return state === "Z" || state === "X" ? undefined : started;
  } catch {
    return undefined;
  }
}

function otherStart(pid: number): string | undefined {
  try {
    const [state = "", ...started] = execFileSync("ps", ["-o", "state=,lstart=", "-p", String(pid)], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
      timeout: 5_000,
    })
      .trim()
      .split(/\s+/);
    return state === "" || state.startsWith("Z") ? undefined : started.join(" ");
  } catch {
    return undefined;
  }
}

/** The mark of a process that runs now; undefined when none with this number does. */
export function markOf(pid: number): ProcessMark | undefined {
  if (!Number.isSafeInteger(pid) || pid <= 0) return undefined;
  const started = process.platform === "linux" ? linuxStart(pid) : otherStart(pid);
  return started === undefined ? undefined : { pid, started };
}

/** This very process. */
export function ownMark(): ProcessMark {
  return markOf(process.pid) ?? { pid: process.pid, started: "" };
}

/** Whether the very process marked (not a later one with its number) still runs. */
export function isRunning(mark: ProcessMark): boolean {
  const now = markOf(mark.pid);
  return now !== undefined && (mark.started === "" || now.started === mark.started);
}

/** Reads a mark back from a file's text; undefined when it holds none. */
export function parseMark(text: string): ProcessMark | undefined {
  try {
    const { pid, started } = JSON.parse(text) as Partial<ProcessMark>;
    return typeof pid === "number" && typeof started === "string" ? { pid, started } : undefined;
  } catch {
    return undefined;
  }
}

/** Asks again every `everyMs` until the answer is yes; false when `forMs` have gone by without one. */
export async function waitUntil(
  answer: () => boolean | Promise<boolean>,
  { forMs, everyMs = 50 }: { forMs: number; everyMs?: number },
): Promise<boolean> {
  const end = performance.now() + forMs;
  while (!(await answer())) {
    if (performance.now() > end) return false;
    await new Promise((resolve) => setTimeout(resolve, everyMs));
  }
  return true;
}

/** Ends a process: the polite signal first, the hard one when it still runs after `forMs`. */
export async function endProcess(
  mark: ProcessMark,
  { signal, forMs, group = false }: { signal: NodeJS.Signals; forMs: number; group?: boolean },
): Promise<void> {
  const send = (what: NodeJS.Signals) => {
    if (!isRunning(mark)) return;
    try {
      process.kill(group ? -mark.pid : mark.pid, what);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "ESRCH") throw error;
    }
  };
  send(signal);
  if (await waitUntil(() => !isRunning(mark), { forMs })) return;
  send("SIGKILL");
  await waitUntil(() => !isRunning(mark), { forMs: 5_000 });
}
