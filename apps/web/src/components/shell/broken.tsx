"use client";

import { Frame } from "./frame";

/** The server's reference of an error, to find it in its log; nothing else of an error is ever shown. */
function referenceOf(error: unknown): string | undefined {
  if (typeof error !== "object" || error === null || !("digest" in error)) return undefined;
  return typeof error.digest === "string" ? error.digest : undefined;
}

export function Broken({ error, retry }: { readonly error: unknown; readonly retry: () => void }) {
  const reference = referenceOf(error);
  return (
    <Frame>
      <h1 className="pb-5 text-title">This page could not be drawn</h1>
      <div className="grid max-w-prose justify-items-start gap-5">
        <div>
          <p className="text-lead">Something went wrong here, not with you.</p>
          <p>
            Try again. If it stays, tell who runs this server
            {reference === undefined ? "." : `, and give them the reference ${reference}.`}
          </p>
        </div>
        <button
          type="button"
          onClick={retry}
          className="inline-flex min-h-12 cursor-pointer items-center border border-ink px-5 font-semibold hover:bg-ink hover:text-paper"
        >
          Try again
        </button>
      </div>
    </Frame>
  );
}
