import { fileURLToPath } from "node:url";

/** Where the migrations are, for whoever applies them. */
export const migrationsFolder = fileURLToPath(new URL("../../../prisma/migrations", import.meta.url));
