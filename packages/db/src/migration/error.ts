/** Migrations could not be read, applied or written. The message names the migration and what to do. */
export class MigrationError extends Error {
  override name = "MigrationError";
}
