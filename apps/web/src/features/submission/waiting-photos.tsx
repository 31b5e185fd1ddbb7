"use client";
import { useEffect, useState } from "react";
import { submissionPath } from "../../lib/path";
import { sendKept } from "../evidence/send-kept";
import { forgetPhoto, type KeptPhoto, keepPhoto, photosOfClub } from "./photo-store";

type Left = Pick<KeptPhoto, "key" | "submission" | "problem">;

/** Sends what waits; a refused one stays with why. */
async function sendWaiting(club: string): Promise<readonly Left[]> {
  const left: Left[] = [];
  let signal = true;
  for (const photo of await photosOfClub(club).catch(() => [])) {
    const { submission, problem } = photo;
    const sent =
      signal && problem === "" ? await sendKept({ ...photo, for: `submission:${submission}` }) : undefined;
    if (sent?.at === "sent") {
      await forgetPhoto(photo.key);
      continue;
    }
    if (sent?.at === "noSignal" || sent?.at === "signedOut") signal = false;
    const refused = sent?.at === "refused" ? `${sent.text.what} ${sent.text.remedy}` : problem;
    if (refused !== problem) await keepPhoto({ ...photo, problem: refused });
    left.push({ ...photo, problem: refused });
  }
  return left;
}

/** Photos of one's changes that this device still holds because there was no signal: sent from here, told until then. */
export function WaitingPhotos({ club }: { readonly club: string }) {
  const [left, setLeft] = useState<readonly Left[]>([]);
  useEffect(() => {
    let gone = false;
    const send = async () => {
      const now = await sendWaiting(club);
      if (!gone) setLeft(now);
    };
    void send();
    const online = () => void send();
    window.addEventListener("online", online);
    return () => {
      gone = true;
      window.removeEventListener("online", online);
    };
  }, [club]);
  const changes = [...new Set(left.map(({ submission }) => submission))];
  return (
    <ul role="status" className="grid gap-2 empty:hidden">
      {changes.map((submission) => {
        const of = left.filter((one) => one.submission === submission);
        const refused = of.flatMap(({ problem }) => (problem === "" ? [] : [problem]));
        return (
          <li key={submission} className="max-w-prose border-line border-l-4 py-1 pl-4">
            <a href={`${submissionPath(club, submission)}#photos`}>
              {of.length === 1 ? "1 photo" : `${of.length} photos`} of a change
            </a>{" "}
            {of.length === 1 ? "is" : "are"} still on this device
            {refused.length === 0 ? ", and sent when there is a signal." : `. ${refused.join(" ")}`}
          </li>
        );
      })}
    </ul>
  );
}
