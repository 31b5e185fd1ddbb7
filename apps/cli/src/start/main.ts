import { mkdtemp, readdir } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { EmbeddedServerError, MigrationError, ServiceRoleError } from "@trunnion/db/admin";
import { type DemoSignIns, demoSignIns, wantsDemo } from "@trunnion/prisma/state";
import { asked } from "./asked";
import { buildIfNeeded } from "./build";
import { type OpenDatabase, openDatabase } from "./database";
import { env } from "./env";
import { StartFault } from "./fault";
import { dataFolder } from "./place";
import { choosePort, readPort } from "./port";
import { lastLines, type Program } from "./program";
import { claim, note, type Run, release } from "./run";
import { authSecret } from "./secret";
import { Undoing } from "./undoing";
import { isHealthy, originOf, startWeb, waitForWeb, webLog } from "./web";

const OPTIONS = {
  dev: { type: "boolean" },
  // For tests: an empty database with nothing forced to the disk, deleted at the end.
  throwaway: { type: "boolean" },
  help: { type: "boolean", short: "h" },
} as const;

const HELP = `npm start [-- --dev]

  --dev        serve from the sources, for those who change them

PORT           port on 127.0.0.1; 3000 when not set, the next free one when taken
TRUNNION_DATA  folder for data, secrets and logs; .data when not set
DATABASE_URL   PostgreSQL 15 or newer to use instead of the embedded one`;

async function tellOther(run: Run, folder: string): Promise<number> {
  const who = `process ${run.self.pid}, data in ${folder}`;
  if (run.origin === undefined) {
    console.log(`Trunnion is starting already (${who}): wait for its line.`);
    return 0;
  }
  if (await isHealthy(run.origin)) {
    console.log(`Trunnion runs already at ${run.origin} (${who}).`);
    return 0;
  }
  console.error(
    `Trunnion runs already (${who}) but does not answer at ${run.origin}: end it (kill ${run.self.pid}) and start again.`,
  );
  return 1;
}

async function fill(
  urls: { ownerUrl: string; serviceUrl: string },
  log: (line: string) => void,
): Promise<DemoSignIns | undefined> {
  if (await wantsDemo(urls.ownerUrl)) {
    const { seedDemo } = await import("@trunnion/prisma/seed");
    log("Filling the database with the demo …");
    await seedDemo({ ...urls, today: new Date().toISOString().slice(0, 10), log });
  }
  return demoSignIns(urls.ownerUrl);
}

/** What an earlier version of the program worked out is not shown as this one's. */
async function bringUpToDate(serviceUrl: string, log: (line: string) => void): Promise<void> {
  const { Database, rebuildOutdatedClubs } = await import("@trunnion/service");
  const service = new Database(serviceUrl);
  try {
    await rebuildOutdatedClubs(service, log);
  } finally {
    await service.close();
  }
}

function sayDemo({ password, people }: DemoSignIns): string {
  return `(demo sign-ins: ${people.map(({ email, as }) => `${email} (${as})`).join(", ")}; password: ${password})`;
}

interface Serving {
  readonly folder: string;
  readonly dev: boolean;
  readonly wishedPort: number;
  readonly undoing: Undoing;
  readonly log: (line: string) => void;
}

/** Fills, builds and serves on an open database; resolves to the web program's exit, which nobody asked for. */
async function serve(
  database: OpenDatabase,
  { folder, dev, wishedPort, undoing, log }: Serving,
): Promise<number> {
  const { ownerUrl, serviceUrl } = database;
  const demo = await fill({ ownerUrl, serviceUrl }, log);
  await bringUpToDate(serviceUrl, log);
  const started = (program: Program) => {
    undoing.add(() => program.stop());
    return note(folder, { program: program.mark });
  };
  if (!dev) await buildIfNeeded({ folder, log, started });
  const port = await choosePort(wishedPort, log);
  const origin = originOf(port);
  const web = await startWeb({ folder, port, dev, serviceUrl, authSecret: await authSecret(folder), demo });
  await started(web);
  await waitForWeb(web, origin, webLog(folder));
  await note(folder, { program: web.mark, origin, ownerUrl, serviceUrl });
  log(`Trunnion is ready at ${origin}${demo ? ` ${sayDemo(demo)}` : ""}`);
  return web.ended;
}

/** A folder that is new or empty: what is thrown away at the end must not be somebody's. */
async function throwawayFolder(): Promise<string> {
  if (env.databaseUrl !== undefined)
    throw new StartFault("--throwaway has a database of its own: unset DATABASE_URL");
  if (env.dataFolder === undefined) return mkdtemp(join(tmpdir(), "trunnion-start-"));
  const folder = dataFolder();
  if ((await readdir(folder).catch(() => [])).length === 0) return folder;
  throw new StartFault(
    `--throwaway deletes its data at the end, and ${folder} (TRUNNION_DATA) holds some: name an empty folder`,
  );
}

async function begin(options: { dev: boolean; throwaway: boolean }, undoing: Undoing): Promise<number> {
  const log = (line: string) => console.log(line);
  const wishedPort = readPort(env.port);
  const ending = asked();
  const folder = options.throwaway ? await throwawayFolder() : dataFolder();
  const other = await claim(folder);
  if (other) return tellOther(other, folder);
  undoing.add(() => release(folder));
  const database = await openDatabase({ folder, log, throwaway: options.throwaway });
  undoing.add(() => database.close());
  const ended = await Promise.race([
    ending,
    serve(database, { folder, dev: options.dev, wishedPort, undoing, log }),
  ]);
  if (ended === "asked") return 0;
  throw new StartFault(
    `the web application ended with code ${ended}. The end of its log:\n${await lastLines(webLog(folder))}`,
  );
}

function isFault(error: unknown): error is Error {
  return [StartFault, EmbeddedServerError, MigrationError, ServiceRoleError].some(
    (kind) => error instanceof kind,
  );
}

/** `npm start`: everything from an empty folder to a page that answers; ends when told to, leaving nothing running. */
export async function main(argv: readonly string[]): Promise<void> {
  const undoing = new Undoing();
  let code = 70;
  try {
    const { values } = parseArgs({ args: [...argv], options: OPTIONS });
    if (values.help) console.log(HELP);
    const { dev = false, throwaway = false } = values;
    code = values.help ? 0 : await begin({ dev, throwaway }, undoing);
  } catch (error) {
    const mendable = isFault(error) || (error as { code?: string }).code?.startsWith("ERR_PARSE_ARGS");
    console.error(mendable ? `Trunnion did not start: ${(error as Error).message}` : error);
    code = mendable ? 1 : 70;
  }
  await undoing.run();
  process.exit(code);
}
