import { decisionOutcomeWords } from "@trunnion/register";
import { useState } from "react";
import { SmallPlate } from "../../components/plate";
import { type EntryView, found, sayTally } from "./view";

function sayDecision({ decision }: EntryView): string {
  if (decision.state === "conflict") return "decided twice, differently";
  return decision.state === "none" ? "" : decisionOutcomeWords[decision.outcome];
}

function Row({ view }: { readonly view: EntryView }) {
  const { sheet, entryId } = view.entry;
  const decided = sayDecision(view);
  const alarming = view.decision.state === "conflict" || view.tally.conflicts > 0;
  return (
    <li className="border-hair border-b">
      <a
        href={`#${entryId}`}
        className="grid min-h-20 grid-cols-[4rem_1fr] items-center gap-3 py-2 no-underline"
      >
        <span className="text-center font-semibold text-title tabular-nums">{sheet.entry.runningNumber}</span>
        <span className="grid gap-0.5">
          <span className="flex flex-wrap items-center gap-2">
            {sheet.car.onRegister ? (
              <SmallPlate chassis={sheet.car.chassis} />
            ) : (
              <span>not on the register</span>
            )}
            <span className="text-small">{sheet.entry.driver}</span>
          </span>
          <span className="text-small">
            {sheet.deviations.length === 0 ? "nothing known to differ" : `${sheet.deviations.length} differ`}
            {"; "}
            {sayTally(view.tally)}
          </span>
          {decided === "" && view.unsent === 0 ? null : (
            <span className={`font-semibold text-small ${alarming ? "text-red" : ""}`}>
              {[decided, view.unsent === 0 ? "" : `${view.unsent} not sent yet`]
                .filter((part) => part !== "")
                .join(", ")}
            </span>
          )}
        </span>
      </a>
    </li>
  );
}

/** Every entry, found by its running number. */
export function EntryList({ views }: { readonly views: readonly EntryView[] }) {
  const [typed, setTyped] = useState("");
  const shown = found(views, typed);
  const decided = views.filter(({ decision }) => decision.state === "decided").length;
  return (
    <div className="grid gap-3">
      <label className="grid gap-1">
        <span className="text-small">Running number, chassis or driver</span>
        <input
          type="search"
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
          autoComplete="off"
          maxLength={80}
          className="min-h-14 border border-ink bg-paper px-3 text-lead"
        />
      </label>
      <p role="status" className="text-small">
        {decided} of {views.length} decided{shown.length === views.length ? "" : `, ${shown.length} shown`}
      </p>
      <ul>
        {shown.map((view) => (
          <Row key={view.entry.entryId} view={view} />
        ))}
      </ul>
      {shown.length === 0 ? <p>No car of this event fits that. Clear the search to see all.</p> : null}
    </div>
  );
}
