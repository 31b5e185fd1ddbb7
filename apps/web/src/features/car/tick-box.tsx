import { compareCarsPath } from "../../lib/path";
import { tickedForm, tickedName } from "./tick";

/** Ticks a car of a list, to be compared with others. */
export function TickBox({ reference }: { readonly reference: string }) {
  return (
    <label className="tick print:hidden">
      <input
        type="checkbox"
        name={tickedName}
        value={reference}
        form={tickedForm}
        aria-label={`Tick ${reference}`}
      />
    </label>
  );
}

/**
 * Sends what is ticked to where cars are compared: a plain form, so that no script is needed for it.
 *
 * @param few whether the list has too few cars to compare, so that it is there only for cars ticked before
 */
export function TickedCars({ club, few }: { readonly club: string; readonly few: boolean }) {
  return (
    <form
      id={tickedForm}
      action={compareCarsPath(club)}
      method="get"
      className={`print:hidden flex flex-wrap items-center gap-x-4 text-small ${few ? "not-has-checked:hidden" : ""}`}
    >
      <button type="submit" className="min-h-11 cursor-pointer underline underline-offset-2">
        Ticked cars side by side
      </button>
      {/* Cars ticked before that the list no longer has. */}
      <span data-kept className="inline-flex flex-wrap gap-x-3 empty:hidden" />
    </form>
  );
}
