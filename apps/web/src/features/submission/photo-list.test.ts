import { evidenceLimits, submissionLimits } from "@trunnion/register";
import { expect, test } from "vitest";
import { admitted, type ShownPhoto, sayPhotoState, sayWaiting } from "./photo-list";

const file = (name: string, size: number) => ({ name, size }) as File;

test("files go in up to the limit of a change, and the others are told with the number", () => {
  const files = ["a", "b", "c"].map((name) => file(name, 10));
  const { taken, problems } = admitted(files, submissionLimits.photos - 1);
  expect(taken.map(({ name }) => name)).toEqual(["a"]);
  expect(problems).toEqual([
    `A change has at most ${submissionLimits.photos} photos: 2 were not added. Remove one first.`,
  ]);
  expect(admitted(files, submissionLimits.photos + 3).taken).toEqual([]);
});

test("a file at the limit of size goes in; one byte more and an empty one do not, each by name", () => {
  const { taken, problems } = admitted(
    [
      file("whole.jpg", evidenceLimits.fileBytes),
      file("big.jpg", evidenceLimits.fileBytes + 1),
      file("no.jpg", 0),
    ],
    0,
  );
  expect(taken.map(({ name }) => name)).toEqual(["whole.jpg"]);
  expect(problems[0]).toContain("big.jpg has 40.0 MB; at most 40 MB is taken");
  expect(problems[1]).toContain("no.jpg is empty");
});

test("what waits is counted; what is sent or refused does not wait", () => {
  const photo = (at: "kept" | "sent" | "refused" | "sending"): ShownPhoto => ({
    key: at,
    name: at,
    about: "",
    state: at === "sent" ? { at, evidence: "e" } : at === "refused" ? { at, problem: "HEIC" } : { at },
  });
  expect(sayWaiting([photo("sent"), photo("refused")])).toBe("");
  expect(sayWaiting([photo("kept")])).toBe("1 photo is not sent yet.");
  expect(sayWaiting([photo("kept"), photo("sending")])).toBe("2 photos are not sent yet.");
  expect(sayPhotoState({ at: "refused", problem: "HEIC" })).toBe("HEIC");
});
