import type { SubmissionMix } from "@trunnion/register";

/** Threads and lengths that are taken for others: told before they are, and no hindrance. */
export function MixList({ mixes }: { readonly mixes: readonly SubmissionMix[] }) {
  if (mixes.length === 0) return null;
  return (
    <div className="max-w-prose border-red border-l-4 py-1 pl-4">
      <p className="font-semibold">
        {mixes.some(({ kind }) => kind !== "lengths") ? "Threads not to mix" : "Lengths that look alike"}
      </p>
      <ul className="grid gap-1 text-small">
        {mixes.map(({ text }) => (
          <li key={text}>{text.charAt(0).toUpperCase() + text.slice(1)}</li>
        ))}
      </ul>
      <p className="text-fine text-soft">It does not stop a change from being handed in or accepted.</p>
    </div>
  );
}
