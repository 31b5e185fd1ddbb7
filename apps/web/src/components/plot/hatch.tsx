import type { ReactNode } from "react";

/** What fills an area: told apart by drawing, not by colour, so that it reads in grey and by whoever sees no red. */
export const hatches = ["lines", "dots", "mark", "ink", "open", "cross"] as const;
export type Hatch = (typeof hatches)[number];

const lines: Readonly<Record<Exclude<Hatch, "mark" | "ink" | "open">, ReactNode>> = {
  lines: <path d="M-1 7 7 -1M-1 1 1 -1M5 7 7 5" className="stroke-ink" strokeWidth="1" />,
  dots: <circle cx="3" cy="3" r="1.3" className="fill-ink" />,
  cross: <path d="M0 3H6M3 0V6" className="stroke-ink" strokeWidth="0.9" />,
};

/** The patterns of one drawing; `id` keeps them apart from another drawing's on the page. */
export function HatchDefinitions({ id }: { readonly id: string }) {
  return (
    <defs>
      {(["lines", "dots", "cross"] as const).map((hatch) => (
        <pattern key={hatch} id={`${id}-${hatch}`} width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" className="fill-paper" />
          {lines[hatch]}
        </pattern>
      ))}
    </defs>
  );
}

/** How an area of a drawing with these patterns is filled. */
export function hatchFill(id: string, hatch: Hatch): { readonly fill?: string; readonly className: string } {
  // The one accent, for what differs; in print it is black, as ink is.
  if (hatch === "mark") return { className: "fill-red stroke-ink" };
  if (hatch === "ink") return { className: "fill-soft stroke-ink" };
  if (hatch === "open") return { className: "fill-paper stroke-ink" };
  return { fill: `url(#${id}-${hatch})`, className: "stroke-ink" };
}

export interface LegendProps {
  readonly id: string;
  readonly entries: readonly { readonly hatch: Hatch; readonly label: string; readonly count?: string }[];
}

/** What each filling stands for, with how many there are. */
export function Legend({ id, entries }: LegendProps) {
  return (
    <ul className="flex flex-wrap gap-x-6 gap-y-1 text-small">
      {entries.map(({ hatch, label, count }) => (
        <li key={`${hatch} ${label}`} className="inline-flex items-center gap-2">
          <svg aria-hidden width="26" height="14" viewBox="0 0 26 14" className="shrink-0">
            <HatchDefinitions id={`${id}-${hatch}-key`} />
            <rect x="0.5" y="0.5" width="25" height="13" {...hatchFill(`${id}-${hatch}-key`, hatch)} />
          </svg>
          <span>
            {label}
            {count === undefined ? null : <span className="text-soft">, {count}</span>}
          </span>
        </li>
      ))}
    </ul>
  );
}
