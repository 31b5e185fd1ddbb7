import {
  noSourceTitle,
  type SourceKindName,
  sourceKindWords,
  type Trust,
  trusts,
  type Verdict,
  verdictWords,
} from "@trunnion/register";

const trustWords: Readonly<Record<Trust, string>> = {
  documented: "documented",
  stated: "stated by somebody who should know",
  inferred: "inferred",
  unknown: "not known",
};

export const trustOptions = trusts.map((trust) => ({ value: trust, label: trustWords[trust] }));

export const sourceKindOptions = (Object.keys(sourceKindWords) as SourceKindName[]).map((kind) => ({
  value: kind,
  label: sourceKindWords[kind],
}));

/** A source in a list of them; none has no title of its own. */
export const isNoSource = (title: string): boolean => title === noSourceTitle;

/** A verdict in words; of what a version does not speak of there is none. */
export const sayVerdict = (verdict: Verdict | undefined): string =>
  verdict === undefined ? "not specified" : verdictWords[verdict];
