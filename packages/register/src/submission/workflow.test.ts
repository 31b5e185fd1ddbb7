import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  isOpenSubmission,
  moveSubmission,
  type SubmissionParty,
  type SubmissionStatus,
  type SubmissionStep,
  submissionStatuses,
  submissionSteps,
  submissionStepsFor,
} from "./workflow";

const maker: ReadonlySet<SubmissionParty> = new Set(["maker"]);
const reviewer: ReadonlySet<SubmissionParty> = new Set(["reviewer"]);
const both: ReadonlySet<SubmissionParty> = new Set(["maker", "reviewer"]);
const nobody: ReadonlySet<SubmissionParty> = new Set();

describe("the workflow of a submission", () => {
  test.each<[SubmissionStatus, SubmissionStep, SubmissionStatus]>([
    ["draft", "save", "draft"],
    ["draft", "submit", "submitted"],
    ["submitted", "query", "queried"],
    ["queried", "save", "queried"],
    ["queried", "answer", "answered"],
    ["answered", "query", "queried"],
    ["answered", "accept", "accepted"],
    ["submitted", "decline", "declined"],
    ["queried", "withdraw", "withdrawn"],
  ])("leads from %s by %s to %s", (status, step, next) => {
    expect(moveSubmission(status, step, both)).toEqual({ ok: true, status: next });
  });

  test.each<[SubmissionStatus, SubmissionStep]>([
    ["accepted", "save"],
    ["accepted", "withdraw"],
    ["declined", "accept"],
    ["withdrawn", "submit"],
    ["draft", "accept"],
    ["draft", "query"],
    ["submitted", "submit"],
    ["submitted", "save"],
    ["submitted", "answer"],
  ])("has no way from %s by %s", (status, step) => {
    expect(moveSubmission(status, step, both)).toEqual({ ok: false, because: "status" });
  });

  test("does not let the owner decide, nor the registrar speak for the owner", () => {
    expect(submissionStepsFor("submitted", maker)).toEqual(["withdraw"]);
    expect(submissionStepsFor("submitted", reviewer)).toEqual(["query", "accept", "decline"]);
    expect(submissionStepsFor("queried", maker)).toEqual(["save", "answer", "withdraw"]);
  });

  test("tells a stranger nothing of where it stands", () => {
    for (const status of submissionStatuses) {
      for (const step of submissionSteps) {
        expect(moveSubmission(status, step, nobody)).toEqual({ ok: false, because: "party" });
      }
    }
  });

  test("once decided or withdrawn never moves again, whoever tries what in whatever order", () => {
    const steps = fc.array(fc.constantFrom(...submissionSteps), { maxLength: 60 });
    fc.assert(
      fc.property(steps, (taken) => {
        let status: SubmissionStatus = "draft";
        for (const step of taken) {
          const move = moveSubmission(status, step, both);
          if (!isOpenSubmission(status)) expect(move.ok).toBe(false);
          if (move.ok) status = move.status;
        }
        // Whatever was decided had been handed in: there is no way round the maker.
        if (status === "accepted" || status === "declined") expect(taken).toContain("submit");
      }),
    );
  });

  test("can be brought to an end from every open status", () => {
    for (const status of submissionStatuses.filter(isOpenSubmission)) {
      expect(submissionStepsFor(status, maker)).toContain("withdraw");
    }
  });
});
