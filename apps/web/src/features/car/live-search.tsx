"use client";
import { type ReactNode, useRef } from "react";
import { useFollowing } from "./use-following";

export interface LiveSearchProps {
  /** The form that asks with a plain GET: without a script it is all there is. */
  readonly form: ReactNode;
  /** How many were found. */
  readonly told: string;
  /** What was found. Links in it with `data-live` are answered in place; the name finds the one to stay at. */
  readonly children: ReactNode;
}

/** Lists and counts that follow as one types, by asking for the page itself: latest answer wins, nothing typed is lost. */
export function LiveSearch({ form, told, children }: LiveSearchProps) {
  const typing = useRef<HTMLDivElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const { found, asking, failed, type, press } = useFollowing({ typing, list });
  return (
    <>
      <div ref={typing} onInput={type} onSubmit={type}>
        {form}
      </div>
      <p role="status" className="pt-4 text-lead">
        <span id="found-told">{found?.told ?? told}</span>
        {failed ? (
          <span className="text-small"> · The register does not answer; what is shown was found before.</span>
        ) : null}
      </p>
      {/* biome-ignore lint/a11y: its links work by themselves, by key and without a script; here they are answered in place */}
      <div ref={list} tabIndex={-1} onClick={press} aria-busy={asking} className="found">
        {found === undefined ? (
          <div id="found">{children}</div>
        ) : (
          // biome-ignore lint/security/noDangerouslySetInnerHtml: this page's own list, as the server drew it
          <div id="found" dangerouslySetInnerHTML={{ __html: found.html }} />
        )}
      </div>
    </>
  );
}
