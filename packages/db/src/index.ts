export { Database } from "./client";
export type { Prisma } from "./generated/prisma/client";
export * from "./generated/prisma/enums";
export { prepareServiceRole, ServiceRoleError } from "./role";
export type { ClubTables } from "./scope";
