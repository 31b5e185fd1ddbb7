import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { environment } from "./env";

const repository = join(dirname(fileURLToPath(import.meta.url)), "..");

/** Reads cars in from a table as whoever holds the machine does, with the command. */
export async function importCars(club: string, table: string): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "trunnion-cars-"));
  try {
    const file = join(folder, "cars.csv");
    await writeFile(file, table);
    await promisify(execFile)(
      process.execPath,
      ["apps/cli/bin/trunnion.mjs", "import", file, "--club", club],
      {
        cwd: repository,
        env: { ...environment.all, TRUNNION_DATA: environment.data },
      },
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
