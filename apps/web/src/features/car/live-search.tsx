"use client";
import { type FormEvent, type MouseEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { Follower, notFollowing, withTyped } from "./follow";

export interface LiveSearchProps {
  /** The form that asks with a plain GET: without a script it is all there is. */
  readonly form: ReactNode;
  /** How many were found. */
  readonly told: string;
  /** What was found. Links in it with `data-live` are answered in place; the name finds the one to stay at. */
  readonly children: ReactNode;
}

const asked = () => new URL(window.location.href).searchParams.get("q") ?? "";

/** Lists and counts that follow as one types, by asking for the page itself: latest answer wins, nothing typed is lost. */
export function LiveSearch({ form, told, children }: LiveSearchProps) {
  const [{ found, asking, failed }, setFollowing] = useState(notFollowing);
  const [follower] = useState(() => new Follower(setFollowing));
  const typing = useRef<HTMLDivElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const pressed = useRef<string>(undefined);

  useEffect(() => {
    const field = typing.current?.querySelector<HTMLInputElement>("input[name=q]");
    follower.begin();
    // What was typed before this script came.
    if (field?.form && field.value.trim() !== asked()) follower.type(field.form, 0);
    const goBack = () => {
      if (field) field.value = asked();
      follower.ask(window.location.href);
    };
    const again = () => follower.again();
    window.addEventListener("popstate", goBack);
    window.addEventListener("online", again);
    return () => {
      window.removeEventListener("popstate", goBack);
      window.removeEventListener("online", again);
      follower.stop();
    };
  }, [follower]);

  useEffect(() => {
    if (found === undefined) return;
    // What was chosen there is now among what the list brings.
    for (const choice of typing.current?.querySelectorAll("select") ?? []) choice.value = "";
    if (pressed.current === undefined) return;
    const links = [...(list.current?.querySelectorAll<HTMLElement>("[data-live]") ?? [])];
    const same = links.find((link) => link.dataset.live === pressed.current);
    pressed.current = undefined;
    (same ?? list.current)?.focus({ preventScroll: true });
  }, [found]);

  const type = (event: FormEvent<HTMLDivElement>) => {
    const at = event.currentTarget.querySelector("form");
    if (at) follower.type(at, event.type === "submit" ? 0 : undefined);
    if (event.type === "submit") event.preventDefault();
  };
  const press = (event: MouseEvent) => {
    const link = (event.target as Element).closest<HTMLAnchorElement>("a[data-live]");
    const elsewhere = event.metaKey || event.ctrlKey || event.shiftKey || event.altKey;
    if (!link || elsewhere) return;
    event.preventDefault();
    pressed.current = link.dataset.live;
    const form = typing.current?.querySelector("form");
    const url = form ? withTyped(link.href, form) : link.href;
    window.history.pushState(window.history.state, "", url);
    follower.ask(url);
  };
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
