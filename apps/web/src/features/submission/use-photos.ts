"use client";
import type { SubmissionPage } from "@trunnion/api";
import { useEffect, useRef, useState } from "react";
import { smallPicturePath } from "../../lib/path";
import { sendKept } from "../evidence/send-kept";
import { callApi } from "./autosave";
import { admitted, type PhotoState, type ShownPhoto } from "./photo-list";
import { forgetPhoto, type KeptPhoto, keepPhoto, keptPhoto, photosOfChange } from "./photo-store";

/** Milliseconds before photos that could not be sent are tried again. */
const AGAIN = 8_000;

export type PhotosSent = "sent" | "noSignal" | "refused";

export interface PhotosInput {
  readonly club: string;
  readonly id: string;
  /** What the club has. */
  readonly have: SubmissionPage["evidence"];
}

const isPicture = (content: Blob) => content.type.startsWith("image/");

function shownOf(
  { key, name, about, content, problem }: KeptPhoto,
  at: "kept" | "loose" = "kept",
): ShownPhoto {
  return {
    key,
    name,
    about,
    state: problem === "" ? { at } : { at: "refused", problem },
    ...(isPicture(content) ? { picture: URL.createObjectURL(content) } : {}),
  };
}

const haveOf = ({ club, have }: PhotosInput): readonly ShownPhoto[] =>
  have.map(({ id, picture, quarterTurns, caption, fileName, characteristic }) => ({
    key: id,
    name: caption === "" ? fileName : caption,
    about: characteristic,
    state: { at: "sent", evidence: id },
    ...(picture ? { picture: smallPicturePath(club, { id, quarterTurns }, 320) } : {}),
  }));

/**
 * Photos of a draft: kept on this device as soon as they are taken, sent one by one while there is a signal. Those that
 * an earlier tab left behind are taken up again.
 */
export function usePhotos(input: PhotosInput) {
  const { club, id } = input;
  const [photos, setPhotos] = useState(() => haveOf(input));
  const [told, setTold] = useState<readonly string[]>([]);
  // What this browser would not keep, and so is only in this page.
  const loose = useRef(new Map<string, KeptPhoto>());
  const running = useRef<Promise<PhotosSent>>(undefined);
  const timer = useRef<number>(undefined);
  const set = (key: string, more: Partial<ShownPhoto>) =>
    setPhotos((all) => all.map((one) => (one.key === key ? { ...one, ...more } : one)));
  /** Sent twice because its answer was lost, a photo is one piece of evidence, and is shown once. */
  const arrived = (key: string, state: Extract<PhotoState, { at: "sent" }>) =>
    setPhotos((all) =>
      all.some((one) => one.key !== key && one.state.at === "sent" && one.state.evidence === state.evidence)
        ? all.filter((one) => one.key !== key)
        : all.map((one) => (one.key === key ? { ...one, state } : one)),
    );
  const waiting = async (): Promise<readonly KeptPhoto[]> => [
    ...(await photosOfChange(id).catch(() => [])),
    ...loose.current.values(),
  ];
  const keep = async (photo: KeptPhoto): Promise<"kept" | "loose"> => {
    try {
      await keepPhoto(photo);
      loose.current.delete(photo.key);
      return "kept";
    } catch {
      loose.current.set(photo.key, photo);
      return "loose";
    }
  };
  const forget = async (key: string) => {
    loose.current.delete(key);
    await forgetPhoto(key).catch(() => undefined);
  };
  const sendOne = async (key: string): Promise<PhotosSent> => {
    const photo = loose.current.get(key) ?? (await keptPhoto(key));
    if (!photo) return "sent";
    const kept: PhotoState = { at: loose.current.has(key) ? "loose" : "kept" };
    set(key, { state: { at: "sending" } });
    const sent = await sendKept({ ...photo, for: `submission:${id}` });
    if (sent.at === "sent") {
      await forget(key);
      arrived(key, sent);
      return "sent";
    }
    if (sent.at === "refused") {
      const problem = `${sent.text.what} ${sent.text.remedy}`;
      await keep({ ...photo, problem });
      set(key, { state: { at: "refused", problem } });
      return "refused";
    }
    if (sent.at === "signedOut") setTold(["Sign in again to send the photos. They are kept on this device."]);
    set(key, { state: kept });
    return "noSignal";
  };
  const sendAll = async (): Promise<PhotosSent> => {
    window.clearTimeout(timer.current);
    let worst: PhotosSent = "sent";
    for (const { key, problem } of await waiting()) {
      const came = problem === "" ? await sendOne(key) : "refused";
      if (came === "refused") worst = "refused";
      if (came !== "noSignal") continue;
      timer.current = window.setTimeout(() => void flush(), AGAIN);
      return "noSignal";
    }
    return worst;
  };
  /** One at a time; whoever comes while others are under way goes after them. */
  const flush = async (): Promise<PhotosSent> => {
    while (running.current) await running.current;
    running.current = sendAll().finally(() => {
      running.current = undefined;
    });
    return running.current;
  };
  const add = async (files: readonly File[], about: string) => {
    const { taken, problems } = admitted(files, photos.length);
    setTold(problems);
    for (const content of taken) {
      const key = crypto.randomUUID();
      const photo = { key, club, submission: id, about, name: content.name, content, problem: "" };
      const at = await keep(photo);
      setPhotos((all) => [...all, shownOf(photo, at)]);
    }
    await flush();
  };
  const about = async ({ key, state }: ShownPhoto, shows: string) => {
    set(key, { about: shows });
    if (state.at === "sent") {
      const said = { club, id, evidence: state.evidence, about: shows };
      const answer = await callApi("submission.aboutPhoto", said).catch(() => undefined);
      if (answer?.ok !== true)
        setTold([
          answer?.refusal?.what ?? "No signal: what the photo shows was not saved. Choose it again later.",
        ]);
      return;
    }
    const photo = loose.current.get(key) ?? (await keptPhoto(key));
    if (photo) await keep({ ...photo, about: shows });
  };
  const remove = async ({ key, state, picture }: ShownPhoto) => {
    if (state.at === "sent") {
      const said = { club, id, evidence: state.evidence };
      const answer = await callApi("submission.removePhoto", said).catch(() => undefined);
      if (answer?.ok !== true)
        return setTold([
          answer?.refusal?.what ?? "No signal: the photo is still with the club. Remove it later.",
        ]);
    } else await forget(key);
    if (picture?.startsWith("blob:")) URL.revokeObjectURL(picture);
    setPhotos((all) => all.filter((one) => one.key !== key));
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page opens
  useEffect(() => {
    let gone = false;
    void photosOfChange(id)
      .catch(() => [])
      .then((kept) => {
        if (gone) return;
        setPhotos((all) => [
          ...all,
          ...kept.filter(({ key }) => all.every((one) => one.key !== key)).map((one) => shownOf(one)),
        ]);
        if (kept.length > 0) void flush();
      });
    const online = () => void flush();
    window.addEventListener("online", online);
    return () => {
      gone = true;
      window.clearTimeout(timer.current);
      window.removeEventListener("online", online);
    };
  }, [id]);
  return { photos, told, add, about, remove, flush };
}

export type Photos = ReturnType<typeof usePhotos>;
