import type { SaveState } from "./autosave";

const states: Readonly<Record<Exclude<SaveState["at"], "saved" | "conflict" | "refused">, string>> = {
  kept: "Saved as you go.",
  saving: "Saving…",
  offline: "No signal: kept on this device, and sent when it is back.",
};

/** How the draft stands, in a line that is read out when it changes. */
export function SaveLine({ state }: { readonly state: SaveState }) {
  const text =
    state.at === "saved"
      ? `Saved at ${state.time}.`
      : state.at === "conflict" || state.at === "refused"
        ? "Not saved."
        : states[state.at];
  return (
    <p role="status" className="text-small text-soft">
      {text}
    </p>
  );
}
