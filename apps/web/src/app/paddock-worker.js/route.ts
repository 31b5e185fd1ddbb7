import { join } from "node:path";
import { build } from "esbuild";

// Bundled once, when the application is built.
export const dynamic = "force-static";

/** The worker that lets the paddock page open without a connection. */
export async function GET(): Promise<Response> {
  const { outputFiles } = await build({
    entryPoints: [join(process.cwd(), "src/worker/paddock-worker.ts")],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: "es2022",
    define: { "process.env.NODE_ENV": '"production"' },
  });
  return new Response(outputFiles[0]?.text, {
    headers: { "content-type": "text/javascript; charset=utf-8", "cache-control": "no-cache" },
  });
}
