"use client";
import {
  type FormEvent,
  type MouseEvent,
  type RefObject,
  useCallback,
  useEffect,
  useRef,
  useState,
} from "react";
import { Follower, type Following, notFollowing, type Show, withTyped } from "./follow";

interface Frames {
  /** What holds the form. */
  readonly typing: RefObject<HTMLElement | null>;
  /** What holds the list. */
  readonly list: RefObject<HTMLElement | null>;
  readonly show: Show;
}

/** What is shown, and what a key in the form and a press in the list do. */
export interface FollowingHands extends Following {
  readonly type: (event: FormEvent<HTMLElement>) => void;
  readonly press: (event: MouseEvent) => void;
}

const asked = () => new URL(window.location.href).searchParams.get("q") ?? "";

/** Begins with what was typed before this script came; goes back and forth with the address; asks again after silence. */
function useAddress(follower: Follower, { typing }: Pick<Frames, "typing">): void {
  useEffect(() => {
    const field = typing.current?.querySelector<HTMLInputElement>("input[name=q]");
    follower.begin();
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
  }, [follower, typing]);
}

/** The hands of a form whose list follows it. */
export function useFollowing({ typing, list, show }: Frames): FollowingHands {
  const [following, setFollowing] = useState(notFollowing);
  const [follower] = useState(() => new Follower(setFollowing, show));
  const { asking, failed, shown } = following;
  /** The link to stay at once the list is there; one pressed while another answer is on its way is followed then. */
  const pressed = useRef<{ readonly name: string; readonly follow: boolean }>(undefined);
  useAddress(follower, { typing });

  const go = useCallback(
    (link: HTMLAnchorElement) => {
      pressed.current = { name: link.dataset.live ?? "", follow: false };
      const form = typing.current?.querySelector("form");
      const url = form ? withTyped(link.href, form) : link.href;
      window.history.pushState(window.history.state, "", url);
      follower.ask(url);
    },
    [follower, typing],
  );

  useEffect(() => {
    if (failed) pressed.current = undefined;
    if (shown === 0) return;
    // What was chosen and asked for is now among what the list brings; what was chosen since is still to be asked for.
    const query = new URL(window.location.href).searchParams;
    for (const choice of typing.current?.querySelectorAll("select") ?? [])
      if (query.get(choice.name) === choice.value) choice.value = "";
    if (pressed.current === undefined) return;
    const { name, follow } = pressed.current;
    pressed.current = undefined;
    const links = [...(list.current?.querySelectorAll<HTMLAnchorElement>("a[data-live]") ?? [])];
    const same = links.find((link) => link.dataset.live === name);
    (same ?? list.current)?.focus({ preventScroll: true });
    if (follow && same) go(same);
  }, [shown, failed, go, list, typing]);

  const type = (event: FormEvent<HTMLElement>) => {
    const form = event.currentTarget.querySelector("form");
    if (form) follower.type(form, event.type === "submit" ? 0 : undefined);
    if (event.type === "submit") event.preventDefault();
  };
  const press = (event: MouseEvent) => {
    const link = (event.target as Element).closest<HTMLAnchorElement>("a[data-live]");
    const elsewhere = event.metaKey || event.ctrlKey || event.shiftKey || event.altKey;
    if (!link || elsewhere) return;
    event.preventDefault();
    // The list it stands in is about to be another: the same link of that one is meant.
    if (asking) pressed.current = { name: link.dataset.live ?? "", follow: true };
    else go(link);
  };
  return { ...following, type, press };
}
