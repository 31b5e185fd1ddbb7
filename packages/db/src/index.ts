export { databaseAway } from "./away";
export {
  columnsNow,
  insertRows,
  insertTables,
  type OwnedRows,
  type RowUpdate,
  replaceRows,
  updateRows,
} from "./bulk";
export { Database } from "./client";
export { Prisma } from "./generated/prisma/client";
export * from "./generated/prisma/enums";
export type { ClubTables } from "./scope";
