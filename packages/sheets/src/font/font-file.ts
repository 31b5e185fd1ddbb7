import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

const packageName = "@expo-google-fonts/source-sans-3";

/**
 * Where a font file of the npm package lies. Asked of Node's own resolver first; a bundler gives this module
 * an address that is on no disk, and then the folders from the working directory upwards are looked through.
 */
export function resolveFontFile(file: string): string {
  const tried: string[] = [];
  try {
    return createRequire(import.meta.url).resolve([packageName, file].join("/"));
  } catch {
    tried.push(`the packages seen from ${import.meta.url}`);
  }
  for (let folder = process.cwd(); ; folder = dirname(folder)) {
    const candidate = join(folder, "node_modules", packageName, file);
    if (existsSync(candidate)) return candidate;
    if (dirname(folder) === folder) break;
  }
  tried.push(`node_modules in ${process.cwd()} and above`);
  throw new Error(
    `font file ${packageName}/${file} not found in ${tried.join(", nor in ")}; run npm install`,
  );
}
