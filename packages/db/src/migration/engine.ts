import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import * as engine from "@prisma/schema-engine-wasm/schema_engine_bg";
import { WholeScriptAdapterFactory } from "./adapter";
import { MigrationError } from "./error";

/** Everything is ours: no table or enum of the database is managed by somebody else. */
export const NO_FILTER = { externalTables: [], externalEnums: [] };

/** The part of the platform's WebAssembly that is used; neither library nor Node's types declare it. */
interface WebAssemblyLoader {
  instantiate(
    bytes: Uint8Array,
    imports: object,
  ): Promise<{ instance: { exports: { __wbindgen_start(): void } } }>;
}

let loaded: Promise<void> | undefined;

/** Puts the engine's WebAssembly into the module that wraps it: what a bundler would do. */
async function load(): Promise<void> {
  const entry = createRequire(import.meta.url).resolve("@prisma/schema-engine-wasm/schema_engine_bg");
  const bytes = await readFile(entry.replace(/\.js$/, ".wasm"));
  const { WebAssembly } = globalThis as unknown as { WebAssembly: WebAssemblyLoader };
  const { instance } = await WebAssembly.instantiate(bytes, { "./schema_engine_bg.js": engine });
  const wrapper = engine as unknown as { __wbg_set_wasm(exports: object): void };
  wrapper.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
}

/** The engine's errors carry their words for people beside a code. */
function worded(error: unknown): string {
  const { message, code } = error as { message?: string; code?: string };
  return [code, message ?? String(error)].filter((part) => part !== undefined).join(": ");
}

/**
 * Does something with Prisma's schema engine, connected to a database by the ordinary driver:
 * no engine program is downloaded or run.
 *
 * @throws MigrationError with the engine's own words
 */
export async function withEngine<T>(
  ownerUrl: string,
  work: (engine: engine.SchemaEngine) => Promise<T>,
): Promise<T> {
  loaded ??= load();
  await loaded;
  const factory = new WholeScriptAdapterFactory(ownerUrl);
  try {
    const bound = bindMigrationAwareSqlAdapterFactory(factory);
    const opened = await engine.SchemaEngine.new({ datamodels: undefined }, () => undefined, bound);
    try {
      return await work(opened);
    } finally {
      opened.free();
    }
  } catch (error) {
    throw new MigrationError(worded(factory.scriptError ?? error), { cause: error });
  } finally {
    await factory.close();
  }
}
