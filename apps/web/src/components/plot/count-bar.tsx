import { type SpreadRow, standings } from "@trunnion/register";
import { HatchDefinitions, hatchFill } from "./hatch";
import { stackOf, standingHatch } from "./histogram";

export interface CountBarProps {
  readonly id: string;
  readonly row: Pick<SpreadRow, (typeof standings)[number]>;
  /** What the whole width stands for. */
  readonly most: number;
}

const width = 240;

/** One row's values as a bar, split by how they stand against factory; the figures stand in the row beside it. */
export function CountBar({ id, row, most }: CountBarProps) {
  const stack = stackOf(standings.map((standing) => row[standing]));
  const across = (count: number) => Math.round((count / Math.max(1, most)) * (width - 2) * 10) / 10;
  return (
    <svg aria-hidden viewBox={`0 0 ${width} 14`} preserveAspectRatio="none" className="count-bar">
      <HatchDefinitions id={id} />
      {standings.map((standing, index) => {
        const [from, to] = stack[index] ?? [0, 0];
        if (from === to) return null;
        const { className, ...fill } = hatchFill(id, standingHatch[standing]);
        return (
          <rect
            key={standing}
            data-standing={standing}
            data-count={to - from}
            x={1 + across(from)}
            y="1"
            width={across(to - from)}
            height="12"
            strokeWidth="0.8"
            className={className}
            {...fill}
          />
        );
      })}
    </svg>
  );
}
