import type { SupportLine } from "@trunnion/api";
import type { Trust } from "@trunnion/register";
import { evidencePath } from "../../lib/path";
import { sayPiece, Thumb } from "./thumb";

const words: Readonly<Record<Trust, string>> = {
  documented: "documented",
  stated: "stated by the keeper",
  inferred: "inferred",
  unknown: "origin not known",
};
/** How much of the ring is inked: all, half, none, and a broken one. */
const marks: Readonly<Record<Trust, string>> = {
  documented: "M6 1a5 5 0 1 0 0 10a5 5 0 1 0 0-10z",
  stated: "M6 1a5 5 0 0 0 0 10z",
  inferred: "",
  unknown: "",
};

/** How far a value is trusted: a word with a mark beside it. */
export function TrustMark({ trust }: { readonly trust: Trust }) {
  return (
    <span className="inline-flex items-center gap-1.5 text-fine">
      <svg aria-hidden viewBox="0 0 12 12" className="size-3">
        <circle
          cx="6"
          cy="6"
          r="5"
          fill="none"
          stroke="currentColor"
          strokeWidth="1"
          {...(trust === "unknown" ? { strokeDasharray: "2 2" } : {})}
        />
        {marks[trust] === "" ? null : <path d={marks[trust]} fill="currentColor" />}
      </svg>
      {words[trust]}
    </span>
  );
}

export interface SupportMarkProps {
  readonly club: string;
  readonly support: readonly SupportLine[];
  /** Left out where the line beside says it already. */
  readonly trust?: Trust;
}

/** Pictures beside one value; more are told as a number. */
const SHOWN = 3;

/** What supports a value: how far it is trusted, and the first pictures that show it, each a way to its page. */
export function SupportMark({ club, support, trust }: SupportMarkProps) {
  const more = support.length - SHOWN;
  return (
    <>
      {trust === undefined ? null : <TrustMark trust={trust} />}
      {support.length === 0 ? null : (
        <span className="support-strip">
          {support.slice(0, SHOWN).map((piece) => (
            <a key={piece.linkId} href={evidencePath(club, piece.id)} title={sayPiece(piece)}>
              {piece.picture ? (
                <Thumb club={club} piece={piece} />
              ) : (
                <span className="text-fine">
                  PDF<span className="sr-only">: {sayPiece(piece)}</span>
                </span>
              )}
            </a>
          ))}
          {more > 0 ? <span className="self-center text-fine text-soft">and {more} more</span> : null}
        </span>
      )}
    </>
  );
}
