import type { DecisionLine } from "@trunnion/api";
import { sayNumberKind } from "@trunnion/register";
import { carPath, claimPath } from "../../lib/path";
import { sayDecision } from "./words";

export interface StandingProps {
  readonly club: string;
  readonly chassis: string;
  /** How many cars claim its chassis number. */
  readonly claims: number;
  readonly decisions: readonly DecisionLine[];
  readonly mergedInto?: string;
  readonly mayEdit: boolean;
}

/** What is decided, or open, about the numbers a car bears; nothing where nobody ever asked. */
export function Standing({ club, chassis, claims, decisions, mergedInto, mayEdit }: StandingProps) {
  const open = claims > 1 && !decisions.some(({ kind }) => kind === "chassis");
  if (mergedInto === undefined && decisions.length === 0 && !open) return null;
  return (
    <section aria-label="How its numbers stand" className="mb-6 max-w-prose border-ink border-l-4 py-1 pl-4">
      {mergedInto === undefined ? null : (
        <p className="font-semibold">
          This record turned out to be of the same car as <a href={carPath(club, mergedInto)}>{mergedInto}</a>
          , which has everything of it.
        </p>
      )}
      {open ? (
        <p>
          {claims} cars claim this number, and nothing is decided yet.{" "}
          {mayEdit ? <a href={claimPath(club, "chassis", chassis)}>Weigh the claims</a> : null}
        </p>
      ) : null}
      {decisions.map((decision) => (
        <div key={decision.id}>
          <p className="font-semibold">
            {sayNumberKind(decision.kind).replace(/^./, (letter) => letter.toUpperCase())}:{" "}
            {sayDecision(decision)}
          </p>
          <p className="whitespace-pre-line">{decision.reason}</p>
          {mayEdit ? (
            <p className="print:hidden text-small">
              <a href={claimPath(club, decision.kind, decision.numberKey)}>See it, or reconsider it</a>
            </p>
          ) : null}
        </div>
      ))}
    </section>
  );
}
