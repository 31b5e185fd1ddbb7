import type { BracketModel } from "@trunnion/register";
import type { ReactNode } from "react";
import { type BracketMarks, bracketMarks, bracketScale, isBeyond } from "./bracket-scale";

export interface BracketProps {
  /** Limits, nominal, value and expanded uncertainty, SI. */
  readonly model: BracketModel;
  /** Further values over the same limits, SI: a fleet's cars, earlier readings. */
  readonly others?: readonly number[];
  /** Draws the value as one that differs; left out, it does where it lies beyond a limit. */
  readonly differs?: boolean;
  /** Read out in place of the drawing; left out where the words beside it say the same. */
  readonly text?: string;
  /** Drawn width in pixels. */
  readonly width?: number;
}

const height = 24;
const floor = 18;
const inset = 3;

/**
 * The signature mark: limits as a bracket on its back, value as a tick, uncertainty as a whisker, nominal as a notch
 * under the floor. A limit that is not there leaves its end open; a value far outside becomes an arrow at the edge.
 */
export function Bracket({ model, others = [], differs, text, width = 132 }: BracketProps) {
  const marks = bracketMarks(model);
  const known = others.filter((other) => Number.isFinite(other));
  const scale = bracketScale(marks, known);
  const across = (share: number) => Math.round((inset + share * (width - 2 * inset)) * 10) / 10;
  const at = (value: number) => across(Math.min(1, Math.max(0, scale(value))));
  const drawing = (
    <>
      <Limits marks={marks} at={at} width={width} />
      <Nominal marks={marks} scale={scale} at={at} />
      {known.map((other, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two cars may share a value, and the list never moves
        <path key={index} d={`M${at(other)} ${floor - 11}v9`} className="stroke-soft" strokeWidth="1" />
      ))}
      <Whisker marks={marks} at={at} scale={scale} />
      <Tick
        place={marks.value === undefined ? undefined : scale(marks.value)}
        across={across}
        differs={differs ?? isBeyond(marks)}
      />
    </>
  );
  const size = { width, height, viewBox: `0 0 ${width} ${height}`, className: "shrink-0" };
  if (text === undefined) {
    return (
      <svg aria-hidden {...size}>
        {drawing}
      </svg>
    );
  }
  return (
    <svg role="img" aria-label={text} {...size}>
      {drawing}
    </svg>
  );
}

interface Placed {
  readonly marks: BracketMarks;
  readonly at: (value: number) => number;
}

function Limits({ marks: { lower, upper }, at, width }: Placed & { readonly width: number }): ReactNode {
  const base = `M${inset} ${floor}H${width - inset}`;
  if (lower === undefined && upper === undefined)
    return <path d={base} className="stroke-line" strokeWidth="1" />;
  const from = lower === undefined ? `M${width * 0.2} ${floor}` : `M${at(lower)} ${floor - 7}V${floor}`;
  const to = upper === undefined ? `H${width * 0.8}` : `H${at(upper)}V${floor - 7}`;
  return (
    <>
      <path d={base} className="stroke-line" strokeWidth="1" strokeDasharray="1 3" />
      <path d={from + to} fill="none" className="stroke-ink" strokeWidth="1.6" />
    </>
  );
}

function Nominal({
  marks: { nominal },
  scale,
  at,
}: Placed & { readonly scale: (value: number) => number }): ReactNode {
  if (nominal === undefined || scale(nominal) < 0 || scale(nominal) > 1) return null;
  return (
    <path
      d={`M${at(nominal)} ${floor + 1}l2.6 4.4h-5.2z`}
      className="fill-paper stroke-ink"
      strokeWidth="0.9"
    />
  );
}

function Whisker({
  marks: { value, uncertainty },
  at,
  scale,
}: Placed & { readonly scale: (value: number) => number }): ReactNode {
  // Beside an arrow at the edge there is no place to show it.
  if (value === undefined || uncertainty === 0 || scale(value) < 0 || scale(value) > 1) return null;
  const [from, to] = [at(value - uncertainty), at(value + uncertainty)];
  const y = floor - 8;
  return (
    <path
      d={`M${from} ${y}H${to}M${from} ${y - 2.5}v5M${to} ${y - 2.5}v5`}
      className="stroke-ink"
      strokeWidth="1"
    />
  );
}

interface TickProps {
  readonly place: number | undefined;
  readonly across: (share: number) => number;
  readonly differs: boolean;
}

function Tick({ place, across, differs }: TickProps): ReactNode {
  if (place === undefined) return null;
  const ink = differs ? "fill-red" : "fill-ink";
  if (place >= 0 && place <= 1) {
    return <rect x={across(place) - 1.4} y={floor - 15} width="2.8" height="17.5" className={ink} />;
  }
  const tip = place < 0 ? across(0) : across(1);
  const back = place < 0 ? 7 : -7;
  return <path d={`M${tip} ${floor - 8}l${back} -5v10z`} className={ink} />;
}
