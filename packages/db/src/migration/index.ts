export { applyMigrations } from "./apply";
export { type AuthorMigrationInput, authorMigration } from "./author";
export { diffSql, readModels } from "./diff";
export { MigrationError } from "./error";
