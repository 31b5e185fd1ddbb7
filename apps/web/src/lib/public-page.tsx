import "server-only";
import { type createCaller, logFault, refusalOf } from "@trunnion/api";
import { type JsonLd, scriptText } from "@trunnion/register";
import { headers } from "next/headers";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { Frame } from "../components/shell/frame";
import { isUnreadable } from "./address";
import { api } from "./service";

/** What an address for everybody loads; nothing there is a page that does not exist. */
export async function publicLoad<T>(
  path: string,
  load: (caller: ReturnType<typeof createCaller>) => Promise<T>,
): Promise<T> {
  try {
    return await load(await api());
  } catch (error) {
    if (refusalOf(error) || isUnreadable(error)) notFound();
    logFault(error, path);
    throw error;
  }
}

/** This service's own address as the visitor reached it, for data that names itself whole. */
export async function ownOrigin(): Promise<string> {
  const asked = await headers();
  const host = asked.get("x-forwarded-host") ?? asked.get("host") ?? "localhost";
  const scheme = asked.get("x-forwarded-proto")?.split(",")[0]?.trim() ?? "http";
  return `${scheme === "https" ? "https" : "http"}://${/^[\w.:[\]-]{1,255}$/.test(host) ? host : "localhost"}`;
}

/** A page for everybody, with the same in schema.org's words for machines. */
export async function PublicPage({
  data,
  children,
}: {
  readonly data: JsonLd;
  readonly children: ReactNode;
}) {
  const nonce = (await headers()).get("x-nonce") ?? "";
  return (
    <Frame>
      <script
        type="application/ld+json"
        nonce={nonce}
        // biome-ignore lint/security/noDangerouslySetInnerHtml: data, not markup; scriptText escapes what could end it.
        dangerouslySetInnerHTML={{ __html: scriptText(data) }}
      />
      {children}
    </Frame>
  );
}
