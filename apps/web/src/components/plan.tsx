import type { SheetModel } from "@trunnion/register";
import { assemblyAnchor } from "../lib/path";
import { PlanDrawing } from "./plan-drawing";
import { leaderPlaces, planFrame } from "./plan-frame";

export type Leader = SheetModel["leaders"][number];

export interface PlanProps {
  /** Assemblies in walking order with how many characteristics differ there. */
  readonly leaders: readonly Leader[];
  /** Where a leader leads; left out: the assembly's section on the same page. */
  readonly linkTo?: (leader: Leader) => string;
  /** Leaves out how many differ, where the plan is there to choose by. */
  readonly plain?: boolean;
}

/** "4 deviations", "1 deviation", "none known": what is not recorded may differ all the same. */
export function deviationCount(count: number): string {
  if (count === 0) return "none known";
  return count === 1 ? "1 deviation" : `${count} deviations`;
}

export const toAnchor = (leader: Leader): string => `#${assemblyAnchor(leader.assembly)}`;

/** The plan with its numbered leaders: the way into a car. A club's own assemblies stand in the legend only. */
export function Plan({ leaders, linkTo = toAnchor, plain = false }: PlanProps) {
  return (
    <nav aria-label="Assemblies, on the plan">
      <svg viewBox={planFrame.view} className="block h-auto w-full" role="presentation">
        <PlanDrawing />
        {leaders.map((leader) => (
          <PlanLeader key={leader.assembly} leader={leader} href={linkTo(leader)} plain={plain} />
        ))}
      </svg>
    </nav>
  );
}

function PlanLeader({
  leader,
  href,
  plain,
}: {
  readonly leader: Leader;
  readonly href: string;
  readonly plain: boolean;
}) {
  const place = leaderPlaces[leader.assembly];
  if (place === undefined) return null;
  const [x, y] = place.from;
  const [toX, toY] = place.at;
  const differs = leader.deviations > 0;
  return (
    <a
      href={href}
      aria-label={`${leader.leader} ${leader.label}${plain ? "" : `: ${deviationCount(leader.deviations)}`}`}
      className={differs ? "plan-leader plan-leader-differs" : "plan-leader"}
    >
      <path d={`M${x} ${y}L${toX} ${toY}`} />
      <circle cx={toX} cy={toY} r={differs ? 1.5 : 1.1} className="plan-leader-end" />
      <circle cx={x} cy={y} r="15" className="plan-leader-touch" />
      <circle cx={x} cy={y} r="8.4" className="plan-leader-ring" />
      <text x={x} y={y} textAnchor="middle" dominantBaseline="central">
        {leader.leader}
      </text>
    </a>
  );
}

/** The legend: the same leaders as a list, for narrow screens, for print, and for who reads rather than looks. */
export function PlanLegend({ leaders, linkTo = toAnchor, plain = false }: PlanProps) {
  return (
    <ol className="gap-x-8 sm:columns-2 xl:columns-3 print:columns-2 print:gap-x-5" aria-label="Assemblies">
      {leaders.map((leader) => (
        <li key={leader.assembly} className="break-inside-avoid border-hair border-b">
          <a
            href={linkTo(leader)}
            className="flex min-h-11 items-center gap-3 no-underline hover:underline wide:min-h-0 wide:py-1"
          >
            <LeaderNumber leader={leader.leader} differs={leader.deviations > 0} />
            <span className="grow">{leader.label}</span>
            {plain ? null : (
              <span className={leader.deviations > 0 ? "font-semibold" : "text-soft"}>
                {deviationCount(leader.deviations)}
              </span>
            )}
          </a>
        </li>
      ))}
    </ol>
  );
}

/** A leader's number in its ring; filled where something differs. */
export function LeaderNumber({ leader, differs }: { readonly leader: number; readonly differs: boolean }) {
  return (
    <span
      className={`inline-grid size-[1.6em] shrink-0 place-items-center rounded-full border text-[0.875em] leading-none ${
        differs ? "border-red bg-red font-semibold text-on-red [print-color-adjust:exact]" : "border-line"
      }`}
    >
      {leader}
    </span>
  );
}
