import { fileURLToPath } from "node:url";
import type { NextConfig } from "next";
import { keepQuiet } from "./src/env";
import { headersForEverything } from "./src/lib/security-header";

keepQuiet();

const config: NextConfig = {
  // The packages are TypeScript source; the database drivers stay what they are and are loaded at run time.
  transpilePackages: [
    "@trunnion/api",
    "@trunnion/calc",
    "@trunnion/db",
    "@trunnion/register",
    "@trunnion/service",
    "@trunnion/sheets",
  ],
  serverExternalPackages: [
    "pg",
    "@prisma/client",
    "@prisma/adapter-pg",
    "better-auth",
    "esbuild",
    "pdf-lib",
    "qrcode",
    "@expo-google-fonts/source-sans-3",
  ],
  turbopack: { root: fileURLToPath(new URL("../..", import.meta.url)) },
  // Types are checked by `npm test`, of this application and of every package: not again at each build on a user's machine.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  agentRules: false,
  headers: async () => [{ source: "/:path*", headers: [...headersForEverything] }],
};

export default config;
