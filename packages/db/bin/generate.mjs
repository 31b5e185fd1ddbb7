// Generates the Prisma client from prisma/models when they, or Prisma, have changed since the last time.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const repository = join(here, "../../..");

/** Everything the generated client depends on, as one number. */
function fingerprint(prismaFolder, prismaPackage) {
  const models = join(prismaFolder, "models");
  const files = readdirSync(models, { recursive: true })
    .filter((name) => name.endsWith(".prisma"))
    .sort()
    .map((name) => join(models, name));
  const hash = createHash("sha256");
  for (const file of [
    ...files,
    join(prismaFolder, "prisma.config.ts"),
    prismaPackage,
    fileURLToPath(import.meta.url),
  ]) {
    hash.update(readFileSync(file)).update("\0");
  }
  return hash.digest("hex");
}

/**
 * @param {{ prismaFolder?: string, output?: string, log?: (line: string) => void }} options
 * @returns {boolean} whether anything had to be done
 */
export function generate({
  prismaFolder = join(repository, "prisma"),
  output = join(here, "../src/generated/prisma"),
  log = () => {},
} = {}) {
  const prismaPackage = createRequire(import.meta.url).resolve("prisma/package.json");
  const stamp = `${output}.stamp`;
  const wanted = fingerprint(prismaFolder, prismaPackage);
  if (existsSync(stamp) && existsSync(output) && readFileSync(stamp, "utf8") === wanted) return false;
  log("Generating the database client …");
  const { bin } = JSON.parse(readFileSync(prismaPackage, "utf8"));
  const cli = join(dirname(prismaPackage), typeof bin === "string" ? bin : bin.prisma);
  const done = spawnSync(
    process.execPath,
    [cli, "generate", "--config", join(prismaFolder, "prisma.config.ts"), "--no-hints"],
    {
      cwd: prismaFolder,
      encoding: "utf8",
      env: {
        ...process.env,
        // Generating runs no engine; Prisma only wants to see that there is one, and would download it.
        PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
        PRISMA_HIDE_UPDATE_MESSAGE: "1",
        CHECKPOINT_DISABLE: "1",
      },
    },
  );
  if (done.status !== 0) {
    throw new Error(
      `prisma generate failed:\n${done.error?.message ?? ""}${done.stdout ?? ""}${done.stderr ?? ""}`,
    );
  }
  writeFileSync(stamp, wanted);
  return true;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  try {
    generate({ log: console.log });
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
