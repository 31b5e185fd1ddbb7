import "server-only";
import { openStore, readStoreSettings, type Store } from "@trunnion/api";
import { storeSurroundings } from "../env";

const kept = globalThis as typeof globalThis & { trunnionStore?: Promise<Store> };

/** The one store of this process; opened on first use, so that a build needs none. */
export function store(): Promise<Store> {
  if (!kept.trunnionStore) {
    const { settings, dataFolder } = storeSurroundings();
    const opening = (async () => openStore(readStoreSettings(settings, dataFolder)))();
    kept.trunnionStore = opening;
    // A folder that could not be read is tried again with the next request.
    opening.catch(() => {
      delete kept.trunnionStore;
    });
  }
  return kept.trunnionStore;
}
