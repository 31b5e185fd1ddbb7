import type { SubmissionStep } from "@trunnion/register";

/** A step that somebody is told of. */
export type ToldStep = Exclude<SubmissionStep, "save">;

/** Who is told of a step: whoever made the submission, or whoever keeps the register; nobody of a withdrawal. */
export const toldTo: Readonly<Record<ToldStep, "maker" | "reviewers" | "nobody">> = {
  submit: "reviewers",
  answer: "reviewers",
  withdraw: "nobody",
  query: "maker",
  accept: "maker",
  decline: "maker",
};

/** What the message is headed with, for a car. */
export const subjects: Readonly<Record<ToldStep, (chassis: string) => string>> = {
  submit: (chassis) => `${chassis}: a change was handed in`,
  answer: (chassis) => `${chassis}: your question was answered`,
  withdraw: (chassis) => `${chassis}: a change was withdrawn`,
  query: (chassis) => `${chassis}: a question about your change`,
  accept: (chassis) => `${chassis}: your change is on the record`,
  decline: (chassis) => `${chassis}: your change was declined`,
};

/** The first sentence of the message. */
export const openings: Readonly<Record<ToldStep, string>> = {
  submit: "A change to this car waits for your review.",
  answer: "The question you asked about a change to this car was answered.",
  withdraw: "A change to this car was withdrawn.",
  query: "The registrar has a question about the change you handed in.",
  accept: "The change you handed in was accepted and is on the car's record.",
  decline: "The change you handed in was declined. What you typed is kept, and you can hand it in anew.",
};

/** Tries before sending is given up, and how long is waited after each, seconds: a minute to some hours. */
export const waits: readonly number[] = [60, 300, 1_800, 7_200, 21_600];

/** When a message is tried again after so many tries; nothing when it is given up. */
export function nextTry(tries: number, now: Date): Date | undefined {
  const seconds = waits[tries - 1];
  return seconds === undefined ? undefined : new Date(now.getTime() + seconds * 1_000);
}
