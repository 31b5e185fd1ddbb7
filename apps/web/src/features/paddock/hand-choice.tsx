import { chooseHand, type Hand, useHand } from "./hand";

const hands: readonly { readonly hand: Hand; readonly label: string }[] = [
  { hand: "right", label: "Right hand" },
  { hand: "left", label: "Left hand" },
];

/** Which hand holds the phone: the results change sides. */
export function HandChoice() {
  const held = useHand();
  return (
    <fieldset className="border-ink border-t pt-2">
      <legend className="sr-only">Phone held in</legend>
      <div className="flex flex-wrap items-center gap-x-6">
        <span className="text-small">Phone held in</span>
        {hands.map(({ hand, label }) => (
          <label key={hand} className="inline-flex min-h-14 cursor-pointer items-center gap-3">
            <input
              type="radio"
              name="hand"
              checked={held === hand}
              onChange={() => chooseHand(hand)}
              className="size-6 accent-ink"
            />
            {label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
