import { join } from "node:path";

export interface FolderSettings {
  readonly kind: "folder";
  readonly folder: string;
}

export interface S3Settings {
  readonly kind: "s3";
  readonly bucket: string;
  /** Before every key; empty for none. */
  readonly prefix: string;
  /** Address of a self-hosted store; left out for the original. */
  readonly endpoint?: string;
  readonly region: string;
  readonly key: string;
  readonly secret: string;
}

/** Where photos and documents are kept. */
export type StoreSettings = FolderSettings | S3Settings;

/** A setting of the store that cannot be meant; names the variable, what was found and what would be right. */
export class StoreSettingError extends Error {
  override readonly name = "StoreSettingError";
}

type Surroundings = Readonly<Record<string, string | undefined>>;

function needed(surroundings: Surroundings, name: string): string {
  const value = surroundings[name] ?? "";
  if (value === "")
    throw new StoreSettingError(`${name} is not set, and TRUNNION_STORE names a bucket: set it`);
  return value;
}

function endpointOf(text: string | undefined): { readonly endpoint?: string } {
  if (text === undefined || text === "") return {};
  const url = URL.canParse(text) ? new URL(text) : undefined;
  if (url?.protocol === "https:" || url?.protocol === "http:")
    return { endpoint: url.href.replace(/\/$/, "") };
  throw new StoreSettingError(
    `TRUNNION_STORE_ENDPOINT is "${text}": give an address such as https://store.example.test`,
  );
}

/**
 * Reads where files are kept. `TRUNNION_STORE` is `s3://bucket` or `s3://bucket/prefix`, with `TRUNNION_STORE_KEY` and
 * `TRUNNION_STORE_SECRET`, and where they differ from the usual `TRUNNION_STORE_ENDPOINT` and `TRUNNION_STORE_REGION`
 * (us-east-1). Not set: the folder `evidence` in the data folder.
 *
 * @throws StoreSettingError
 */
export function readStoreSettings(surroundings: Surroundings, dataFolder: string): StoreSettings {
  const wanted = surroundings.TRUNNION_STORE ?? "";
  if (wanted === "") return { kind: "folder", folder: join(dataFolder, "evidence") };
  // A bucket's name: 3 to 63 lower-case letters, digits, dots and dashes (bucket naming rules of the S3 user guide).
  const [, bucket, prefix = ""] =
    /^s3:\/\/([a-z0-9][a-z0-9.-]{1,61}[a-z0-9])(?:\/([A-Za-z0-9._/-]*))?$/.exec(wanted) ?? [];
  if (bucket === undefined || prefix.split("/").includes("..")) {
    throw new StoreSettingError(`TRUNNION_STORE is "${wanted}": give s3://bucket/prefix, or leave it unset`);
  }
  return {
    kind: "s3",
    bucket,
    prefix: prefix.replace(/^\/+|\/+$/g, ""),
    ...endpointOf(surroundings.TRUNNION_STORE_ENDPOINT),
    region: surroundings.TRUNNION_STORE_REGION || "us-east-1",
    key: needed(surroundings, "TRUNNION_STORE_KEY"),
    secret: needed(surroundings, "TRUNNION_STORE_SECRET"),
  };
}
