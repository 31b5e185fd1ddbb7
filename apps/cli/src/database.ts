import { Database } from "@trunnion/service";
import { openDatabase } from "./start/database";

/** Runs a command's work on this installation's database, and lets go of it afterwards, come what may. */
export async function withDatabase<T>(work: (database: Database) => Promise<T>): Promise<T> {
  const opened = await openDatabase({ log: (line) => process.stderr.write(`${line}\n`) });
  const database = new Database(opened.serviceUrl);
  try {
    return await work(database);
  } finally {
    await database.close();
    await opened.close();
  }
}
