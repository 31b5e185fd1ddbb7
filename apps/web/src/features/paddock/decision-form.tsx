import { type DecisionOutcome, decisionOutcomes, decisionOutcomeWords } from "@trunnion/register";
import { useState } from "react";
import { SignaturePad } from "./signature-pad";
import type { Paddock } from "./use-paddock";
import { type EntryView, sayTally } from "./view";

const verbs: Readonly<Record<DecisionOutcome, string>> = {
  pass: "Pass the car",
  passWithAdvice: "Pass with advice",
  refused: "Refuse the car",
};

/** Why an outcome cannot be given; empty where it can. */
function hindrance({ tally }: EntryView, outcome: DecisionOutcome): string {
  if (outcome === "refused") return "";
  const { open, conflicts, refused, advised } = tally;
  if (refused > 0) return `${refused} refused: put right and looked at again, or the car is refused.`;
  if (conflicts > 0) return `${conflicts} in conflict: settle them first.`;
  if (open > 0) return `${open} still open: what was not looked at is no pass.`;
  return outcome === "pass" && advised > 0 ? `${advised} advised: it passes with advice.` : "";
}

export interface DecisionFormProps {
  readonly view: EntryView;
  readonly paddock: Paddock;
}

/** The decision on one car, with a signature. */
export function DecisionForm({ view, paddock }: DecisionFormProps) {
  const [note, setNote] = useState("");
  const [signedBy, setSignedBy] = useState("");
  const [signature, setSignature] = useState("");
  const { decision, entry } = view;
  const standing = decision.state === "none" ? [] : decision.decisions;
  const told = [...new Set(decisionOutcomes.map((outcome) => hindrance(view, outcome)))].filter(
    (text) => text !== "",
  );

  function decide(outcome: DecisionOutcome) {
    const replaces = standing.map(({ key }) => key);
    const said = { note: note.trim(), signedBy: signedBy.trim(), signature, replaces };
    void paddock.sayOfEntry({ entryId: entry.entryId, outcome, ...said });
    setNote("");
    setSignature("");
  }

  return (
    <section aria-labelledby="decision" className="grid gap-3 border-ink border-t-2 pt-3">
      <h2 id="decision" className="text-head">
        Decision
      </h2>
      <p>{sayTally(view.tally)}</p>
      {standing.map(({ key, outcome, by, at, note: reason }) => (
        <p
          key={key}
          className={`border-l-4 pl-3 ${decision.state === "conflict" ? "border-red" : "border-ink"}`}
        >
          <strong>{decisionOutcomeWords[outcome]}</strong>
          {by === "" ? "" : ` by ${by}`}, {new Date(at).toLocaleTimeString("en-GB", { timeStyle: "short" })}
          {reason === "" ? "" : `: ${reason}`}
        </p>
      ))}
      {decision.state === "conflict" ? (
        <p role="alert" className="font-semibold">
          Two scrutineers decided differently. Decide again: both stay on record.
        </p>
      ) : null}
      <label className="grid gap-1">
        <span className="text-small">Note</span>
        <textarea
          value={note}
          onChange={({ target }) => setNote(target.value)}
          rows={2}
          maxLength={2000}
          className="border border-ink bg-paper p-3"
        />
      </label>
      <label className="grid gap-1">
        <span className="text-small">Signed by (driver or entrant)</span>
        <input
          value={signedBy}
          onChange={({ target }) => setSignedBy(target.value)}
          maxLength={120}
          autoComplete="off"
          className="min-h-14 border border-ink bg-paper px-3"
        />
      </label>
      <SignaturePad path={signature} onSign={setSignature} />
      {told.map((text) => (
        <p key={text} className="text-small">
          {text}
        </p>
      ))}
      <div className="grid gap-2 sm:grid-cols-3">
        {decisionOutcomes.map((outcome) => (
          <button
            key={outcome}
            type="button"
            disabled={hindrance(view, outcome) !== ""}
            onClick={() => decide(outcome)}
            className="min-h-16 border border-ink bg-paper px-3 font-semibold enabled:cursor-pointer disabled:border-line disabled:text-soft"
          >
            {verbs[outcome]}
          </button>
        ))}
      </div>
      <p className="text-small text-soft">
        The organiser's current regulations and the scrutineer decide. This certifies no roadworthiness.
      </p>
    </section>
  );
}
