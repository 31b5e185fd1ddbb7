"use client";
import type { RefusalText } from "@trunnion/register";
import { useRef, useState } from "react";
import { submissionPath } from "../../lib/path";
import { callApi, type DraftKeeper } from "./autosave";
import type { PhotosSent } from "./use-photos";

type Step = "submit" | "answer" | "withdraw";

export interface HandInProps {
  readonly club: string;
  readonly id: string;
  readonly keeper: DraftKeeper;
  /** How many things stand in the way of what is in the fields now, as far as this browser sees. */
  readonly look: () => Promise<number>;
  /** Sends the photos that wait. */
  readonly photos: () => Promise<PhotosSent>;
  /** Leads to what is wrong. */
  readonly wrong: () => void;
}

const photoRefused: RefusalText = {
  what: "A photo was not taken by the club.",
  remedy: "Why is said beside it: remove it, or send another in its place. Nothing was handed in yet.",
};

const nothingSaid: { readonly refusal?: RefusalText } = {};

/** Moves a draft on, once everything typed has reached the club; without a signal it says so and loses nothing. */
export function useHandIn({ club, id, keeper, look, photos, wrong }: HandInProps) {
  const [tried, setTried] = useState(false);
  const [sending, setSending] = useState<"ready" | "sending" | "noSignal">("ready");
  const [told, setTold] = useState(nothingSaid);
  // The same key until an answer has come: pressed again over a flaky line it is the same step.
  const key = useRef<string>(undefined);

  const refuse = (refusal: RefusalText) => {
    key.current = undefined;
    setTold({ refusal });
    setSending("ready");
    wrong();
  };
  const sendStep = async (step: Step, text: string) => {
    key.current ??= crypto.randomUUID();
    const version = await keeper.flush();
    if (version === undefined) return setSending(keeper.isOffline ? "noSignal" : "ready");
    const answer = await callApi("submission.step", { club, id, version, key: key.current, step, text });
    if (answer.ok) {
      keeper.forget();
      window.location.assign(submissionPath(club, id));
      return;
    }
    const words = Object.values(answer.fieldErrors ?? {}).flat();
    const remedy = "Nothing was handed in; what you typed is kept.";
    refuse(answer.refusal ?? { what: words.join(" ") || answer.message, remedy });
  };
  const take = async (step: Step, text: string) => {
    setTried(step !== "withdraw");
    setTold(nothingSaid);
    setSending("sending");
    if (step !== "withdraw" && (await look()) > 0) {
      setSending("ready");
      return wrong();
    }
    const sent = step === "withdraw" ? "sent" : await photos();
    if (sent === "noSignal") return setSending("noSignal");
    if (sent === "refused") return refuse(photoRefused);
    try {
      await sendStep(step, text);
    } catch {
      setSending("noSignal");
    }
  };
  return { tried, sending, take, ...told };
}
