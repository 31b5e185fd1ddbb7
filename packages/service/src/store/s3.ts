import type { Readable } from "node:stream";
import type { Blobs } from "./blobs";
import type { S3Settings } from "./setting";

/** Times in milliseconds, and how often a request that failed on the way is sent. */
const LIMITS = { connectionTimeout: 5_000, requestTimeout: 60_000, maxAttempts: 3 } as const;

function isMissing(error: unknown): boolean {
  const { name, $metadata } = error as { name?: string; $metadata?: { httpStatusCode?: number } };
  return name === "NoSuchKey" || (name === "NotFound" && $metadata?.httpStatusCode === 404);
}

async function missingAs<T>(work: Promise<T>, instead: T): Promise<T> {
  try {
    return await work;
  } catch (error) {
    if (isMissing(error)) return instead;
    throw error;
  }
}

/** Keeps files in a bucket of an S3-compatible store. The library is loaded here and nowhere else. */
export async function s3Blobs(settings: S3Settings): Promise<Blobs> {
  const { DeleteObjectCommand, GetObjectCommand, HeadObjectCommand, PutObjectCommand, S3Client } =
    await import("@aws-sdk/client-s3");
  const { bucket, prefix, endpoint, region, key: accessKeyId, secret: secretAccessKey } = settings;
  const { maxAttempts, ...times } = LIMITS;
  const client = new S3Client({
    region,
    credentials: { accessKeyId, secretAccessKey },
    maxAttempts,
    requestHandler: times,
    // What self-hosted stores may not know: checksums in trailers, the bucket in the host's name.
    requestChecksumCalculation: "WHEN_REQUIRED",
    responseChecksumValidation: "WHEN_REQUIRED",
    ...(endpoint === undefined ? {} : { endpoint, forcePathStyle: true }),
  });
  const at = (key: string) => ({ Bucket: bucket, Key: prefix === "" ? key : `${prefix}/${key}` });
  return {
    place: `the bucket ${bucket}${endpoint === undefined ? "" : ` at ${endpoint}`}`,
    async put(key, content) {
      await client.send(
        new PutObjectCommand({ ...at(key), Body: content, ContentLength: content.byteLength }),
      );
    },
    async read(key, range) {
      const Range = range === undefined ? {} : { Range: `bytes=${range.first}-${range.last}` };
      const answer = await missingAs(client.send(new GetObjectCommand({ ...at(key), ...Range })), undefined);
      return answer?.Body as Readable | undefined;
    },
    async exists(key) {
      const head = client.send(new HeadObjectCommand(at(key))).then(() => true);
      return missingAs(head, false);
    },
    async delete(key) {
      await client.send(new DeleteObjectCommand(at(key)));
    },
  };
}
