import { evidenceLimits, submissionLimits } from "@trunnion/register";

/** How one photo of a change stands between this device and the club. */
export type PhotoState =
  | { readonly at: "kept" }
  /** This browser keeps nothing: lost with the tab. */
  | { readonly at: "loose" }
  | { readonly at: "sending" }
  | { readonly at: "sent"; readonly evidence: string }
  | { readonly at: "refused"; readonly problem: string };

/** One photo of a change as its form shows it. */
export interface ShownPhoto {
  readonly key: string;
  /** Address of a small picture; nothing for a document. */
  readonly picture?: string | undefined;
  readonly name: string;
  /** Key of the one characteristic that it shows; empty for all. */
  readonly about: string;
  readonly state: PhotoState;
}

/** Where a photo is, in words. */
export function sayPhotoState(state: PhotoState): string {
  switch (state.at) {
    case "kept":
      return "Kept on this device; sent when there is a signal.";
    case "loose":
      return "This browser keeps no photos: stay on this page until it is sent.";
    case "sending":
      return "Being sent…";
    case "sent":
      return "Sent.";
    case "refused":
      return state.problem;
  }
}

/** Where a form's photos are, all together; nothing where the club has them all. */
export function sayWaiting(photos: readonly ShownPhoto[]): string {
  const waiting = photos.filter(({ state }) => state.at !== "sent" && state.at !== "refused").length;
  if (waiting === 0) return "";
  return waiting === 1 ? "1 photo is not sent yet." : `${waiting} photos are not sent yet.`;
}

/** Which of some files go in beside those there are, and why the others do not. */
export function admitted(
  files: readonly File[],
  have: number,
): { readonly taken: readonly File[]; readonly problems: readonly string[] } {
  const { photos } = submissionLimits;
  const { fileBytes } = evidenceLimits;
  const small = files.filter(({ size }) => size > 0 && size <= fileBytes);
  const taken = small.slice(0, Math.max(0, photos - have));
  const problems = files
    .filter((file) => !small.includes(file))
    .map(({ name, size }) =>
      size === 0
        ? `${name} is empty: take it again.`
        : `${name} has ${(size / 1e6).toFixed(1)} MB; at most ${fileBytes / 1e6} MB is taken. Save it smaller.`,
    );
  const over = small.length - taken.length;
  if (over > 0)
    problems.push(
      `A change has at most ${photos} photos: ${over === 1 ? "one was" : `${over} were`} not added. Remove one first.`,
    );
  return { taken, problems };
}
