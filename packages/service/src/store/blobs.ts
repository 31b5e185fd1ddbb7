import type { Readable } from "node:stream";

/** First and last byte wanted, both included. */
export interface ByteRange {
  readonly first: number;
  readonly last: number;
}

/** What every place that keeps files must do. Keys have `/` between their parts, and no others but letters, digits, `-` and `.`. */
export interface Blobs {
  /** The place in words, for messages: a folder, a bucket. */
  readonly place: string;
  /** Whole or not at all; over what was there. */
  put(key: string, content: Uint8Array): Promise<void>;
  /** Nothing where there is no such key. */
  read(key: string, range?: ByteRange): Promise<Readable | undefined>;
  exists(key: string): Promise<boolean>;
  /** Of no effect where there is no such key. */
  delete(key: string): Promise<void>;
}
