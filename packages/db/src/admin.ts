// What runs a database rather than uses one: for the command line and tests. The web application must not load it.
export { migrationsFolder } from "./folder";
export * from "./migration";
export { prepareServiceRole, ServiceRoleError } from "./role";
export * from "./server";
export { recordStatements, type Statement } from "./statement";
export { openThrowawayDatabase, type ThrowawayDatabase } from "./throwaway-database";
