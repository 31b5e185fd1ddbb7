export { Database } from "./client";
export { migrationsFolder } from "./folder";
export { Prisma } from "./generated/prisma/client";
export * from "./generated/prisma/enums";
export * from "./migration";
export { prepareServiceRole, ServiceRoleError } from "./role";
export type { ClubTables } from "./scope";
export * from "./server";
export { openThrowawayDatabase, type ThrowawayDatabase } from "./throwaway-database";
