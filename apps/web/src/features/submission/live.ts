import type { BrowserGround } from "@trunnion/api";
import {
  characteristicBook,
  consequencesOfSubmission,
  type FieldProblem,
  mixesOfSubmission,
  type ProposedConsequences,
  readSubmission,
  type SubmissionContent,
  type SubmissionMix,
} from "@trunnion/register";
import { basisIn } from "./basis";

/** What a draft amounts to while it is typed. */
export interface LiveReading {
  readonly problems: readonly FieldProblem[];
  readonly proposed: ProposedConsequences;
  readonly mixes: readonly SubmissionMix[];
}

/** Reads a draft and works out what it does: the same engines as on the server, on the same record. */
export function readLive(content: SubmissionContent, ground: BrowserGround): LiveReading {
  const basis = basisIn(ground, characteristicBook(ground.own));
  const read = readSubmission(content, basis);
  return {
    problems: read.problems,
    proposed: consequencesOfSubmission(read, basis),
    mixes: mixesOfSubmission(read, basis),
  };
}
