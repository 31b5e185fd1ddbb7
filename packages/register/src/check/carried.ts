import type { Assembly } from "../characteristic/characteristic";
import type { FindingResult } from "../inspection/inspection";
import type { Check, Station } from "./check";

/** What stood of a check at an earlier event and has not been passed since. */
export interface CarriedFinding {
  readonly checkCode: string;
  readonly result: Extract<FindingResult, "advise" | "refuse">;
  readonly note: string;
  /** What the check said then; empty where its rule set has it no longer. */
  readonly text: string;
  readonly station: Station;
  readonly assembly: Assembly;
  readonly event: string;
  /** ISO day of that event. */
  readonly on: string;
}

/** A note on one line without the marks of a place for figures. */
const oneLine = (text: string, longest: number) => {
  const line = text.replace(/[{}]/g, "").replace(/\s+/g, " ").trim();
  return line.length <= longest ? line : `${line.slice(0, longest - 1)}…`;
};

/**
 * The checks an earlier event's open findings make for a car: one each, saying what was found and when. They stand on
 * the next sheet until a check of the same code is passed.
 */
export function carriedChecks(findings: readonly CarriedFinding[]): readonly Check[] {
  return findings.map(({ checkCode, result, note, text, station, assembly, event, on }) => {
    const word = result === "advise" ? "advised" : "refused";
    const said = oneLine(note, 120);
    return {
      id: `carried-${checkCode}`.slice(0, 80),
      station,
      assembly,
      text: oneLine(`See that it was put right: ${text === "" ? checkCode.replaceAll("-", " ") : text}`, 240),
      criterion: { kind: "seen" },
      when: { op: "always" },
      why: `${word} at ${oneLine(event, 60)} on ${on}${said === "" ? "" : `: “${said}”`}`,
      source: { title: "An earlier event's findings" },
      reason: "carriedAdvisory",
    };
  });
}
