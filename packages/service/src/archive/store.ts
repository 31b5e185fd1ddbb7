import { refused } from "@trunnion/register";
import type { Store } from "../store";
import type { EvidenceFiles } from "./policy";

/** Largest piece of evidence that is read back, bytes: one is held in memory at a time. */
const LARGEST = 500e6;

async function whole(content: AsyncIterable<Buffer>, sha256: string): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of content) {
    chunks.push(chunk);
    bytes += chunk.length;
    if (bytes > LARGEST) {
      const limit = { what: "bytes", found: bytes, limit: LARGEST } as const;
      throw refused("ARCHIVE_LIMIT", { file: "evidence", member: sha256, ...limit });
    }
  }
  return Buffer.concat(chunks);
}

/** The files of evidence of the installation's store, for archives to take from and put back to. */
export function evidenceFilesOf(store: Store): EvidenceFiles {
  return {
    has: (clubId, sha256) => store.club(clubId).exists({ sha256 }),
    open: (clubId, sha256) => store.club(clubId).stream({ sha256 }),
    async keep(clubId, sha256, content) {
      await store.club(clubId).put(await whole(content, sha256));
    },
  };
}
