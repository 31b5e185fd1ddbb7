"use client";
import { useEffect, useMemo, useState } from "react";
import { keepPageOffline, type OfflineState } from "../../lib/keep-offline";
import { signInPath } from "../../lib/path";
import { EntryCard } from "./entry-card";
import { EntryList } from "./entry-list";
import { GaugeChoice } from "./gauge-choice";
import { HandChoice } from "./hand-choice";
import { placeOf } from "./kept";
import { forgetEvent } from "./store";
import { type Paddock, usePaddock } from "./use-paddock";
import { viewsOf } from "./view";

export interface PaddockAppProps {
  readonly club: string;
  readonly event: string;
  /** Name of the event, shown before anything is kept. */
  readonly name: string;
  /** Address of the event's page. */
  readonly back: string;
}

const useHash = () => {
  const [hash, setHash] = useState("");
  useEffect(() => {
    const read = () => {
      setHash(location.hash.slice(1));
      scrollTo(0, 0);
    };
    read();
    addEventListener("hashchange", read);
    return () => removeEventListener("hashchange", read);
  }, []);
  return hash;
};

/** An event in the hand: every car's checks and what was found, with or without a connection. */
export function PaddockApp({ club, event, name, back }: PaddockAppProps) {
  const where = useMemo(() => ({ club, event, place: placeOf(club, event) }), [club, event]);
  const paddock = usePaddock(where);
  const [offline, setOffline] = useState<OfflineState>("preparing");
  const hash = useHash();
  const { kept, opened } = paddock;
  const { pack } = kept;
  const views = useMemo(() => viewsOf(kept), [kept]);
  const has = pack !== undefined;
  useEffect(() => {
    if (has) void keepPageOffline().then(setOffline);
  }, [has]);
  const view = views.find(({ entry }) => entry.entryId === hash);

  if (!pack) return <Waiting paddock={paddock} name={name} opened={opened} />;
  return (
    <div className="mx-auto grid max-w-2xl gap-4">
      <Line paddock={paddock} offline={offline} />
      {view ? (
        <EntryCard key={view.entry.entryId} view={view} pack={pack} paddock={paddock} />
      ) : (
        <>
          <h1 className="text-title">{pack.event.name}</h1>
          <EntryList views={views} />
          <GaugeChoice pack={pack} paddock={paddock} />
          <HandChoice />
          <Keeping paddock={paddock} place={where.place} back={back} />
        </>
      )}
    </div>
  );
}

interface WaitingProps {
  readonly paddock: Paddock;
  readonly name: string;
  readonly opened: boolean;
}

function Waiting({ paddock: { trouble, fault, meet }, name, opened }: WaitingProps) {
  return (
    <div className="mx-auto grid max-w-2xl gap-3">
      <h1 className="text-title">{name}</h1>
      <noscript>
        <p>
          Looking at cars in the hand needs scripts. Without them, print the sheets or use the event's page.
        </p>
      </noscript>
      <p role="status">
        {trouble?.text ?? (fault === "" ? (opened ? "Fetching the event …" : "Opening …") : fault)}
      </p>
      {trouble ? (
        <button
          type="button"
          className="min-h-16 border border-ink px-3 font-semibold"
          onClick={() => void meet(true)}
        >
          Fetch it again
        </button>
      ) : null}
    </div>
  );
}

const offlineWords: Readonly<Record<OfflineState, string>> = {
  ready: "Opens without a connection.",
  preparing: "Getting ready for no connection …",
  no: "This browser will not open this page without a connection. Do not close it, or print the sheets.",
};

/** How this device stands with the server. */
function Line({ paddock, offline }: { readonly paddock: Paddock; readonly offline: OfflineState }) {
  const { kept, trouble, fault, busy, meet } = paddock;
  const refused = kept.records.filter(({ problem }) => problem !== "");
  const unsent = kept.records.filter(({ sent }) => !sent).length - refused.length;
  const photos = kept.photos.length;
  const waiting = [
    ...(unsent === 0 ? [] : [`${unsent} not sent yet`]),
    ...(photos === 0 ? [] : [`${photos} ${photos === 1 ? "photo" : "photos"} not sent yet`]),
  ];
  return (
    <div className="grid gap-1 border-ink border-b pb-2 text-small">
      <div className="flex flex-wrap items-center justify-between gap-x-4">
        <p role="status">
          <strong>{waiting.length === 0 ? "All sent." : `${waiting.join(", ")}.`}</strong>{" "}
          {busy ? "Sending …" : (trouble?.text ?? "")}{" "}
          {trouble?.kind === "signedOut" ? (
            <a href={`${signInPath}?next=${encodeURIComponent(location.pathname)}`}>Sign in</a>
          ) : null}
        </p>
        <button type="button" onClick={() => void meet(false)} className="min-h-11 underline">
          Send now
        </button>
      </div>
      <p className={offline === "no" ? "font-semibold" : "text-soft"}>{offlineWords[offline]}</p>
      {fault === "" ? null : (
        <p role="alert" className="border-red border-l-4 pl-3 font-semibold">
          {fault}
        </p>
      )}
      {refused.map(({ key, problem, record }) => (
        <p key={key} role="alert" className="border-red border-l-4 pl-3">
          Not taken: {"check" in record ? record.check : "decision"}. {problem} It stays on this device.
        </p>
      ))}
    </div>
  );
}

interface KeepingProps {
  readonly paddock: Paddock;
  readonly place: string;
  readonly back: string;
}

/** What is kept here and how it goes. */
function Keeping({ paddock, place, back }: KeepingProps) {
  const { kept, meet } = paddock;
  const unsent = kept.records.filter(({ sent }) => !sent).length + kept.photos.length;
  return (
    <details className="border-ink border-t pt-2">
      <summary className="min-h-14 py-4">On this device</summary>
      <div className="grid justify-items-start gap-3 pb-4">
        <p className="text-small">
          The entries with their drivers' names as of {kept.pack?.packedAt.slice(0, 16).replace("T", " ")}{" "}
          UTC, and what you found, until you take them off.
        </p>
        <button
          type="button"
          className="min-h-14 border border-ink px-4 font-semibold"
          onClick={() => void meet(true)}
        >
          Fetch the entries again
        </button>
        <button
          type="button"
          disabled={unsent > 0}
          className="min-h-14 border border-ink px-4 font-semibold disabled:border-line disabled:text-soft"
          onClick={() => void forgetEvent(place).then(() => location.assign(back))}
        >
          Take this event off this device
        </button>
        {unsent > 0 ? (
          <p className="text-small">{unsent} not sent yet: that would be lost. Send it first.</p>
        ) : null}
      </div>
    </details>
  );
}
