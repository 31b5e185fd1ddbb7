import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { openWorld } from "@trunnion/fixtures";
import { Refusal } from "@trunnion/register";
import { openMember } from "../gate";
import { keepFile } from "../import-file";
import { importView, planImport, settleColumns } from "../import-plan";
import type { Open } from "../import-run";
import { readTableFile } from "../table";

/** For tests: a database of its own, a folder for files, a registrar, and what he does to read a file in. */
export async function openImportDesk() {
  const world = await openWorld();
  const folder = await mkdtemp(join(tmpdir(), "trunnion-import-"));
  const registrar = await world.person({ roles: ["registrar"] });
  const open: Open = (work) => openMember(world.database, registrar, "ours", work);
  const view = (run: string) => open((ctx) => importView(ctx, run));
  return {
    world,
    folder,
    registrar,
    open,
    view,
    async upload(text: string | Uint8Array, file = "cars.csv"): Promise<string> {
      const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
      const stream = Readable.from([Buffer.from(bytes)]);
      const kept = await keepFile({ folder, clubId: world.ours.id, stream, file });
      const table = await readTableFile({ bytes, file });
      const { run } = await open((ctx) =>
        planImport(ctx, { file, sha256: kept.sha256, bytes: bytes.length, table }),
      );
      return run;
    },
    /** Settles the columns as proposed, with these put in their place. */
    async settle(run: string, given: Readonly<Record<number, { as?: string; unit?: string }>> = {}) {
      const { proposals, asOf } = await view(run);
      const columns = proposals.map(({ as, unit = "", index }) => ({ as, unit, ...given[index] }));
      await open((ctx) => settleColumns(ctx, { run, asOf, columns }));
    },
    keptFiles: () => readdir(join(folder, "import", world.ours.id)).catch(() => []),
    cars: (start: string) =>
      world.inClub((db) => db.car.count({ where: { chassisKey: { startsWith: start } } })),
    async close() {
      await world.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
export type ImportDesk = Awaited<ReturnType<typeof openImportDesk>>;

/** The code of what some work is refused with. */
export async function refusalOf(work: Promise<unknown>) {
  const error = await work.then(
    () => new Error("nothing was refused"),
    (reason: unknown) => reason,
  );
  if (!(error instanceof Refusal)) throw error;
  return error.code;
}
