"use client";
import { useRouter } from "next/navigation";
import type { KeyboardEvent, ReactNode } from "react";

export interface MonthKeysProps {
  /** Addresses of the months before and after. */
  readonly previous: string;
  readonly next: string;
  readonly children: ReactNode;
}

/** How many days an arrow goes. */
const days: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -7, ArrowDown: 7 };

/** The day of those on which something falls due that is nearest in the direction of an arrow. */
export function dayTowards(all: readonly string[], from: string, by: number): string | undefined {
  const order = [...all].sort();
  if (Math.abs(by) === 1) return order[order.indexOf(from) + by];
  const wanted = Number(from.slice(8)) + by;
  const beyond = order.filter((day) =>
    by > 0 ? Number(day.slice(8)) >= wanted : Number(day.slice(8)) <= wanted,
  );
  return by > 0 ? beyond[0] : beyond.at(-1);
}

/** Arrow keys over the days of a month; Page up and Page down turn the month. Everything is a link without it. */
export function MonthKeys({ previous, next, children }: MonthKeysProps) {
  const router = useRouter();
  const pressed = (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === "PageUp" || event.key === "PageDown") {
      event.preventDefault();
      router.push(event.key === "PageUp" ? previous : next);
      return;
    }
    const by = days[event.key];
    const { day } = event.target instanceof HTMLElement ? event.target.dataset : {};
    if (by === undefined || day === undefined) return;
    const links = [...event.currentTarget.querySelectorAll<HTMLAnchorElement>("a[data-day]")];
    const towards = dayTowards(
      links.flatMap((one) => one.dataset.day ?? []),
      day,
      by,
    );
    if (towards === undefined) return;
    event.preventDefault();
    links.find((one) => one.dataset.day === towards)?.focus();
  };
  // biome-ignore lint/a11y/noStaticElementInteractions: what is pressed are the links within; this only listens
  return <div onKeyDown={pressed}>{children}</div>;
}
