"use client";
import { type ReactNode, useCallback, useRef, useState } from "react";
import { flushSync } from "react-dom";
import type { Show } from "./follow";
import { foundEndId, foundId } from "./found-part";
import { showFound } from "./show-found";
import { tickedIn } from "./tick";
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
  const shown = useRef<HTMLDivElement>(null);
  const [followed, setFollowed] = useState(false);
  const show = useCallback<Show>((html, isLatest) => {
    const ticked = tickedIn(list.current);
    // From now on the list is this script's own; what the page came with is let go of before anything else is shown.
    flushSync(() => setFollowed(true));
    return shown.current === null ? Promise.resolve() : showFound(shown.current, { html, isLatest, ticked });
  }, []);
  const { told: now, asking, failed, type, press } = useFollowing({ typing, list, show });
  return (
    <>
      <div ref={typing} onInput={type} onSubmit={type}>
        {form}
      </div>
      <p role="status" className="pt-4 text-lead">
        <span id="found-told">{now ?? told}</span>
        {failed ? (
          <span className="text-small"> · The register does not answer; what is shown was found before.</span>
        ) : null}
      </p>
      {/* biome-ignore lint/a11y: its links work by themselves, by key and without a script; here they are answered in place */}
      <div ref={list} tabIndex={-1} onClick={press} aria-busy={asking} className="found">
        {followed ? <div id={foundId} ref={shown} /> : <div id={foundId}>{children}</div>}
        <i id={foundEndId} hidden />
      </div>
    </>
  );
}
