"use client";
import { type ReactNode, useSyncExternalStore } from "react";

const never = () => () => undefined;

/** The reader's time zone; UTC on the server and where no script runs. */
function useZone(): string {
  return useSyncExternalStore(
    never,
    () => Intl.DateTimeFormat().resolvedOptions().timeZone,
    () => "UTC",
  );
}

/** An instant in the reader's time zone; UTC in the markup. */
export function LocalTime({ at }: { readonly at: string }): ReactNode {
  const timeZone = useZone();
  const said = new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short", timeZone });
  return <time dateTime={at}>{said.format(new Date(at))}</time>;
}

/** Says plainly in which zone the times of a page are. */
export function ZoneNote(): ReactNode {
  const zone = useZone();
  return <>Times are in {zone === "UTC" ? "UTC" : `your time zone, ${zone.replaceAll("_", " ")}`}.</>;
}
