import type { Verdict } from "@trunnion/register";
import type { ReactNode } from "react";

/** Centre at 0 0, seven units to each side. */
const ring = <circle r="5.2" />;
const dot = <circle r="1.6" className="fill-current" stroke="none" />;
const diamond = "M0 -6.6 6.6 0 0 6.6 -6.6 0z";

/**
 * One mark a verdict, the same as on the printed sheet, told apart by form and by how much ink it carries: solid
 * wants attention, open is in order, broken is not known. Squares are parts that are there or not, diamonds a choice
 * of part, round ones a measured value, the triangle a limit that is broken.
 */
const marks: Readonly<Record<Verdict, ReactNode>> = {
  outsideLimits: <path d="M0 -6.4 6.8 5.4H-6.8z" className="fill-red stroke-red" strokeLinejoin="round" />,
  missing: <path d="M-5.2 -5.2h10.4v10.4h-10.4zM-5.2 -5.2 5.2 5.2M-5.2 5.2 5.2 -5.2" strokeWidth="1.5" />,
  added: (
    <>
      <path d="M-5.6 -5.6h11.2v11.2h-11.2z" className="fill-red stroke-red" />
      <path d="M-3.4 0h6.8M0 -3.4v6.8" className="stroke-on-red" strokeWidth="1.8" />
    </>
  ),
  differentPart: <path d={diamond} className="fill-red stroke-red" />,
  cannotTell: (
    <>
      {ring}
      <path d="M0 -5.2a5.2 5.2 0 0 0 0 10.4z" className="fill-current" stroke="none" />
    </>
  ),
  acceptedSubstitute: (
    <>
      <path d={diamond} />
      {dot}
    </>
  ),
  periodOption: <path d={diamond} />,
  insideLimits: (
    <>
      {ring}
      {dot}
    </>
  ),
  asSpecified: ring,
  notRecorded: <circle r="5.2" strokeDasharray="2 2.08" />,
};

/** Verdicts that want somebody to look; the rest is in order or not known. */
const wantAttention: ReadonlySet<Verdict> = new Set([
  "outsideLimits",
  "missing",
  "added",
  "differentPart",
  "cannotTell",
]);

export function wantsAttention(verdict: Verdict): boolean {
  return wantAttention.has(verdict);
}

/** The mark and the word: never colour alone, never the mark alone. */
export function VerdictMark({ verdict, text }: { readonly verdict: Verdict; readonly text: string }) {
  return (
    <span
      className={`inline-flex items-baseline gap-1.5 ${wantsAttention(verdict) ? "font-semibold" : "text-soft"}`}
    >
      <svg
        aria-hidden
        viewBox="-7.5 -7.5 15 15"
        width="15"
        height="15"
        className="relative top-[0.15em] shrink-0"
      >
        <g fill="none" stroke="currentColor" strokeWidth="1.2">
          {marks[verdict]}
        </g>
      </svg>
      <span>{text}</span>
    </span>
  );
}
