import {
  Database,
  type EvidenceFiles,
  evidenceFilesOf,
  openStore,
  readStoreSettings,
} from "@trunnion/service";
import { openDatabase } from "./start/database";
import { dataFolder } from "./start/place";
import { storeSurroundings } from "./store/env";

/** Everything that an installation keeps: both connections to its database, and its files. */
export interface Installation {
  readonly database: Database;
  /** As the role that owns the tables: for reading archives back. */
  readonly owner: Database;
  readonly evidence: EvidenceFiles;
}

/** Runs a command's work on this installation, and lets go of it afterwards, come what may. */
export async function withInstallation<T>(work: (installation: Installation) => Promise<T>): Promise<T> {
  const evidence = evidenceFilesOf(await openStore(readStoreSettings(storeSurroundings, dataFolder())));
  const opened = await openDatabase({ log: (line) => process.stderr.write(`${line}\n`) });
  const database = new Database(opened.serviceUrl);
  const owner = new Database(opened.ownerUrl);
  try {
    return await work({ database, owner, evidence });
  } finally {
    await owner.close();
    await database.close();
    await opened.close();
  }
}
