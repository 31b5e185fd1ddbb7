import type { SetupPlanPage } from "@trunnion/api";
import type { ReactNode } from "react";
import { LinkButton } from "../../components/button";
import { Caution } from "../../components/caution";
import { Notice } from "../../components/notice";
import { PageHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { cautions } from "../../lib/caution";
import { settingSheetsPath, setupPlanPath, setupPlanPdfPath } from "../../lib/path";
import { LayoutForm } from "./layout-form";
import { PlanForm } from "./plan-form";
import { PlanLack } from "./plan-lack";
import { PlanSteps } from "./plan-steps";

export interface PlanPageProps {
  readonly club: ClubFace;
  readonly page: SetupPlanPage;
  readonly words: { readonly left: string; readonly right: string };
  /** What was typed, by field. */
  readonly typed: Readonly<Record<string, string>>;
}

/** The way back: which adjuster of a wheel, how far, in which order. */
export function PlanPage({ club, page, words, typed }: PlanPageProps) {
  const { reference, chassis } = page.of;
  const { axle, side, layout } = page;
  const here = setupPlanPath(club.slug, reference);
  return (
    <>
      <PageHead
        title="Plan the way to a setting"
        back={{ href: settingSheetsPath(club.slug, reference), label: "What it is set to" }}
        plate={<Plate chassis={chassis} />}
        lead="Turns and shims in the order of work, with the reading to expect after each."
      />
      <div className="grid grid-cols-1 gap-12">
        <AxleLinks axle={axle} here={(of) => setupPlanPath(club.slug, reference, { axle: of, side })} />
        {layout.known === "unknown" ? (
          <LayoutForm axle={axle} side={side} choices={layout.choices} here={here} />
        ) : layout.known === "notPlanned" ? (
          <Notice
            tone="note"
            text={{ what: `${axleWords[axle]} wheels: ${layout.label.toLowerCase()}.`, remedy: layout.why }}
          />
        ) : (
          <>
            <Outcome page={page} words={words}>
              <LinkButton href={setupPlanPdfPath(club.slug, reference, { ...typed, axle, side })}>
                Print it for the garage
              </LinkButton>
            </Outcome>
            {page.result?.ok ? null : <PlanLack club={club.slug} page={page} />}
            <PlanForm page={page} layout={layout} words={words} typed={typed} here={here} />
          </>
        )}
        <Caution cautions={cautions.plan} />
      </div>
    </>
  );
}

const axleWords = { front: "Front", rear: "Rear" } as const;

interface AxleLinksProps {
  readonly axle: SetupPlanPage["axle"];
  readonly here: (axle: SetupPlanPage["axle"]) => string;
}

function AxleLinks({ axle, here }: AxleLinksProps) {
  return (
    <nav aria-label="Wheels to plan for">
      <ul className="flex flex-wrap gap-x-6">
        {(["front", "rear"] as const).map((of) => (
          <li key={of}>
            <a
              href={here(of)}
              className={`inline-flex min-h-11 items-center ${of === axle ? "font-semibold" : ""}`}
              {...(of === axle ? { "aria-current": "page" as const } : {})}
            >
              {axleWords[of]} wheels
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

type OutcomeProps = Pick<PlanPageProps, "page" | "words"> & { readonly children: ReactNode };

function Outcome({ page, words, children }: OutcomeProps): ReactNode {
  const { result, problems, lacking, asked, axle, side } = page;
  if (result?.ok)
    return (
      <PlanSteps plan={result.plan} wheel={`${axle} ${words[side].toLowerCase()} wheel`}>
        {children}
      </PlanSteps>
    );
  if (result)
    return (
      <Notice
        text={{ what: `This cannot be planned: ${result.because}.`, remedy: "Correct what it names below." }}
      />
    );
  if (!asked) return null;
  const count = problems.length + lacking.length;
  return (
    <Notice
      text={{
        what:
          count === 1
            ? "One figure stands in the way of a plan."
            : `${count} figures stand in the way of a plan.`,
        remedy: "Each is told at its field below. What you typed is still here.",
      }}
    />
  );
}
