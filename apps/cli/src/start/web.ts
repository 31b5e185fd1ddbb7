import { join } from "node:path";
import { waitUntil } from "@trunnion/db/admin";
import type { DemoSignIns } from "@trunnion/prisma/state";
import { StartFault } from "./fault";
import { repository } from "./place";
import { lastLines, type Program, startProgram } from "./program";

/** Longest wait for the first answer; the development server compiles first. */
const READY_MS = 120_000;

/** What the web application is started with. */
export interface WebInput {
  /** Folder for its log. */
  readonly folder: string;
  readonly port: number;
  readonly dev: boolean;
  readonly serviceUrl: string;
  readonly authSecret: string;
  /** Who can be tried, where this is the demo. */
  readonly demo: DemoSignIns | undefined;
}

/** Whether the application at this address says that it is well. */
export async function isHealthy(origin: string): Promise<boolean> {
  try {
    const answer = await fetch(`${origin}/api/health`, {
      signal: AbortSignal.timeout(5_000),
      redirect: "error",
    });
    return answer.status === 200;
  } catch {
    return false;
  }
}

/** Starts the web application on the loopback interface; it may not answer yet. */
export function startWeb({ folder, port, dev, serviceUrl, authSecret, demo }: WebInput): Promise<Program> {
  const next = join(repository, "node_modules/next/dist/bin/next");
  return startProgram({
    command: [next, dev ? "dev" : "start", "--hostname", "127.0.0.1", "--port", String(port)],
    cwd: join(repository, "apps/web"),
    env: {
      TRUNNION_AUTH_SECRET: authSecret,
      TRUNNION_SERVICE_URL: serviceUrl,
      TRUNNION_DATA: folder,
      TRUNNION_ORIGIN: originOf(port),
      TRUNNION_DEMO: demo ? JSON.stringify(demo) : "",
    },
    ...(dev ? {} : { logFile: webLog(folder) }),
  });
}

/** The address people use. */
export function originOf(port: number): string {
  return `http://127.0.0.1:${port}`;
}

/** The file that takes what the web application prints. */
export function webLog(folder: string): string {
  return join(folder, "web.log");
}

/**
 * Waits until the application answers that it is well.
 *
 * @throws StartFault when it ends first, or takes too long, with the end of its log
 */
export async function waitForWeb(program: Program, origin: string, logFile: string): Promise<void> {
  let code: number | undefined;
  void program.ended.then((value) => {
    code = value;
  });
  const well = await waitUntil(async () => code !== undefined || (await isHealthy(origin)), {
    forMs: READY_MS,
    everyMs: 100,
  });
  if (well && code === undefined) return;
  const what =
    code === undefined
      ? `did not answer at ${origin}/api/health within ${READY_MS / 1000} s`
      : `ended with code ${code}`;
  throw new StartFault(`the web application ${what}. The end of ${logFile}:\n${await lastLines(logFile)}`);
}
