import { createHash, createHmac } from "node:crypto";

/**
 * AWS Signature Version 4, written for the tests from its publication: "Signature Version 4 signing process" and
 * "Authenticating Requests: Using the Authorization Header" in the S3 API reference. Checks what the store sends;
 * the store itself signs with the vendor's library.
 */
export interface SignedRequest {
  readonly method: string;
  /** Path and query as sent. */
  readonly url: string;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
}

export interface SigningKey {
  readonly key: string;
  readonly secret: string;
}

const hmac = (key: string | Buffer, text: string) => createHmac("sha256", key).update(text).digest();
const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

/** Query parameters in order of their names, encoded as they came. */
function canonicalQuery(query: string): string {
  if (query === "") return "";
  return query
    .split("&")
    .map((part) => (part.includes("=") ? part : `${part}=`))
    .sort()
    .join("&");
}

/** The signature a request must bear, and the one it bears; nothing where it is not signed at all. */
export function signatures(
  { method, url, headers }: SignedRequest,
  { key, secret }: SigningKey,
): { readonly borne: string; readonly due: string } | undefined {
  const authorization = String(headers.authorization ?? "");
  const [, credential = "", signed = "", borne = ""] =
    /^AWS4-HMAC-SHA256 Credential=([^,]+), ?SignedHeaders=([^,]+), ?Signature=([0-9a-f]{64})$/.exec(
      authorization,
    ) ?? [];
  const [keyId, day = "", region = "", service = "", last] = credential.split("/");
  if (borne === "" || keyId !== key || last !== "aws4_request") return undefined;
  const [path = "", query = ""] = url.split("?");
  const canonicalHeaders = signed
    .split(";")
    .map(
      (name) =>
        `${name}:${String(headers[name] ?? "")
          .trim()
          .replace(/ +/g, " ")}\n`,
    )
    .join("");
  const payload = String(headers["x-amz-content-sha256"] ?? "");
  const request = [method, path, canonicalQuery(query), canonicalHeaders, signed, payload].join("\n");
  const scope = `${day}/${region}/${service}/aws4_request`;
  const toSign = ["AWS4-HMAC-SHA256", String(headers["x-amz-date"]), scope, sha256(request)].join("\n");
  const signing = [day, region, service, "aws4_request"].reduce<string | Buffer>(
    (made, part) => hmac(made, part),
    `AWS4${secret}`,
  );
  return { borne, due: hmac(signing, toSign).toString("hex") };
}
