import type { FormState } from "../../lib/form-state";
import { Notice } from "../notice";
import { fieldId } from "./field-id";

export interface ErrorSummaryProps {
  readonly state: FormState;
  readonly labels: Readonly<Record<string, string>>;
  /** What follows from what is wrong, where that is not that nothing was saved. */
  readonly remedy?: string;
}

/** What came of sending a form, at its head: done, refused, or what is wrong where, each a link to its field. */
export function ErrorSummary({
  state,
  labels,
  remedy = "Nothing was saved yet; what you typed is still here.",
}: ErrorSummaryProps) {
  if (state.done !== undefined) {
    return (
      <p
        role="status"
        className="max-w-prose border-ink border-l-4 py-1 pl-4 font-semibold [overflow-wrap:anywhere]"
      >
        {state.done}
      </p>
    );
  }
  if (state.refusal !== undefined) return <Notice text={state.refusal} />;
  const wrong = Object.entries(state.errors);
  if (wrong.length === 0) return null;
  const what =
    wrong.length === 1 ? "One thing is to be put right." : `${wrong.length} things are to be put right.`;
  return (
    <Notice text={{ what, remedy }}>
      <ul className="mt-2 list-disc pl-5 text-small">
        {wrong.map(([field, messages]) => (
          <li key={field}>
            <a href={`#${fieldId(field)}`}>{labels[field] ?? messages.join(" ")}</a>
            {labels[field] === undefined ? null : `: ${messages.join(" ")}`}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
