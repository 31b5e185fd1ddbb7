import { defineConfig } from "prisma/config";

export default defineConfig({
  schema: "models",
  migrations: { path: "migrations" },
});
