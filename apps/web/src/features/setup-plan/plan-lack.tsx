import type { SetupPlanPage } from "@trunnion/api";
import { newSettingSheetPath } from "../../lib/path";

export interface PlanLackProps {
  readonly club: string;
  readonly page: SetupPlanPage;
}

/** What the record lacks for a plan of this wheel, and what putting it there would add. */
export function PlanLack({ club, page: { fields, of, axle } }: PlanLackProps) {
  const lacking = fields.filter(({ si }) => si === undefined);
  if (lacking.length === 0) return null;
  const points = lacking.filter(({ point }) => point).length;
  const own = lacking.filter(({ point }) => !point);
  const named = [
    ...own.map(({ label }) => label.toLowerCase()),
    ...(points === 0 ? [] : [`${points} of ${fields.filter(({ point }) => point).length} hardpoint figures`]),
  ];
  const measured = own.some(({ name }) => name === "camber" || name === "toe");
  return (
    <section aria-labelledby="lack" className="grid max-w-prose gap-2">
      <h2 id="lack" className="font-semibold">
        What the record lacks for these wheels
      </h2>
      <p>
        {sentence(named)}. Each has a field below. On the record once, none of it is asked for again
        {points === 0
          ? "."
          : `, and every change is told with its ${axle === "front" ? "castor, " : "camber change, "}bump steer and roll-centre height.`}
      </p>
      {measured ? (
        <p>
          <a className="inline-flex min-h-11 items-center" href={newSettingSheetPath(club, of.reference)}>
            Enter what was measured
          </a>
        </p>
      ) : null}
    </section>
  );
}

function sentence(parts: readonly string[]): string {
  const said = parts.join("; ");
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
}
