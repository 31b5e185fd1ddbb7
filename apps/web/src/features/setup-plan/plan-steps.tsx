import { type PlanStep, type SetupPlan, sayAngle, sayMove, sayToe, sideEffectsOf } from "@trunnion/register";
import type { ReactNode } from "react";
import { Caution } from "../../components/caution";
import { SectionHead } from "../../components/page-head";

export interface PlanStepsProps {
  readonly plan: SetupPlan;
  readonly wheel: string;
  /** Beside the heading: print it. */
  readonly children: ReactNode;
}

const targetWords = { camber: "camber", castor: "castor", toeIn: "toe" } as const;

/** The plan: what to do in which order, what the gauge then shows, and what each step does to the others. */
export function PlanSteps({ plan, wheel, children }: PlanStepsProps) {
  const { before, steps, held, atLimit, withinTolerance } = plan;
  return (
    <section aria-labelledby="plan" className="grid grid-cols-1 gap-4">
      <SectionHead id="plan" title={`The ${wheel}, in this order`}>
        {children}
      </SectionHead>
      <p
        role="status"
        className={withinTolerance ? "font-semibold" : "border-red border-l-4 pl-3 font-semibold"}
      >
        {steps.length === 0 && withinTolerance
          ? "Nothing has to be moved."
          : withinTolerance
            ? "Every angle comes within its tolerance: camber 5', castor 15', toe 2'."
            : "This is the nearest that can be set; it stays outside tolerance (camber 5', castor 15', toe 2')."}
      </p>
      {atLimit.map((name) => (
        <p key={name}>The target lies beyond the limit of the {name}.</p>
      ))}
      {held.length === 0 ? null : (
        <p>
          Held where it stands, since nothing else was asked:{" "}
          {held.map((name) => targetWords[name]).join(", ")}.
        </p>
      )}
      <div className="overflow-x-auto">
        <table className="plain-table">
          <caption className="sr-only">Steps with the reading to expect after each</caption>
          <thead>
            <tr>
              <th scope="col">Do</th>
              <th scope="col">Camber then</th>
              <th scope="col">Castor then</th>
              <th scope="col">Toe then</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row" className="font-normal">
                As it stands
              </th>
              <td>{sayAngle(before.camber)}</td>
              <td>{before.castor === null ? "–" : sayAngle(before.castor)}</td>
              <td>{sayToe(before.toeIn)}</td>
            </tr>
            {steps.map((step, index) => (
              <Step key={step.words} step={step} number={index + 1} />
            ))}
            <LeftOver plan={plan} />
          </tbody>
        </table>
      </div>
      <SideEffects plan={plan} />
      <Caution cautions={[plan.caution]} />
    </section>
  );
}

function Step({
  step: { words, after, change },
  number,
}: {
  readonly step: PlanStep;
  readonly number: number;
}) {
  const moved = (si: number | null) =>
    si === null ? null : <span className="block text-fine text-soft">{sayMove(si)}</span>;
  return (
    <tr>
      <th scope="row">
        {number}. {words}
      </th>
      <td>
        {sayAngle(after.camber)}
        {moved(change.camber)}
      </td>
      <td>
        {after.castor === null ? "–" : sayAngle(after.castor)}
        {moved(change.castor)}
      </td>
      <td>
        {sayToe(after.toeIn)}
        {moved(change.toeIn)}
      </td>
    </tr>
  );
}

function LeftOver({ plan: { error } }: { readonly plan: SetupPlan }) {
  const left = (si: number | null) => <td>{si === null ? "not asked" : sayMove(si)}</td>;
  return (
    <tr>
      <th scope="row" className="font-normal">
        Left over: reached less wanted
      </th>
      {left(error.camber)}
      {left(error.castor)}
      {left(error.toeIn)}
    </tr>
  );
}

function SideEffects({ plan }: { readonly plan: SetupPlan }) {
  return (
    <details>
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">What else it moves</summary>
      <dl className="grid max-w-prose grid-cols-[auto_1fr] gap-x-6 gap-y-1">
        {sideEffectsOf(plan).map(({ label, value }) => (
          <div key={label} className="contents">
            <dt>{label}</dt>
            <dd className="tabular-nums">{value}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
