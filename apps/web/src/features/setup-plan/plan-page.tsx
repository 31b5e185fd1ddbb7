import type { SetupPlanPage } from "@trunnion/api";
import { offeredAdjusters, shimDirections, targetFields } from "@trunnion/register";
import type { ReactNode } from "react";
import { Button, LinkButton } from "../../components/button";
import { Caution } from "../../components/caution";
import { fieldId } from "../../components/form/field-id";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { cautions } from "../../lib/caution";
import { settingSheetsPath, setupPlanPath, setupPlanPdfPath } from "../../lib/path";
import { PlanField, type PlanFieldProps } from "./plan-field";
import { PlanSteps } from "./plan-steps";
import { sayGiven } from "./say";

export interface PlanPageProps {
  readonly club: ClubFace;
  readonly page: SetupPlanPage;
  readonly words: { readonly left: string; readonly right: string };
  /** What was typed, by field. */
  readonly typed: Readonly<Record<string, string>>;
}

/** The way back: which adjuster of a front wheel, how far, in which order. */
export function PlanPage({ club, page, words, typed }: PlanPageProps) {
  const { reference, chassis } = page.of;
  const query = { ...typed, side: page.side };
  return (
    <>
      <PageHead
        title="Plan the way to a setting"
        back={{ href: settingSheetsPath(club.slug, reference), label: "What it is set to" }}
        plate={<Plate chassis={chassis} />}
        lead="Turns and shims in the order of work, with the reading to expect after each."
      />
      <div className="grid grid-cols-1 gap-12">
        <Outcome page={page} words={words}>
          <LinkButton href={setupPlanPdfPath(club.slug, reference, query)}>
            Print it for the garage
          </LinkButton>
        </Outcome>
        <PlanForm page={page} words={words} typed={typed} here={setupPlanPath(club.slug, reference)} />
        <Caution cautions={cautions.plan} />
      </div>
    </>
  );
}

type OutcomeProps = Pick<PlanPageProps, "page" | "words"> & { readonly children: ReactNode };

function Outcome({ page, words, children }: OutcomeProps): ReactNode {
  const { result, problems, lacking, asked, side } = page;
  if (page.otherLayout !== undefined)
    return (
      <Notice
        text={{
          what: `The record has "${page.otherLayout}" for this car's front suspension.`,
          remedy: "This page plans double wishbones; what it says holds for no other layout.",
        }}
      />
    );
  if (result?.ok)
    return (
      <PlanSteps plan={result.plan} wheel={`front ${words[side].toLowerCase()} wheel`}>
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

function PlanForm({
  page,
  words,
  typed,
  here,
}: Pick<PlanPageProps, "page" | "words" | "typed"> & { readonly here: string }) {
  const errors = new Map(page.problems.map(({ field, message }) => [field, message]));
  const lacking = new Set(page.lacking);
  const field = (props: Omit<PlanFieldProps, "value" | "error">) => {
    const lack =
      page.asked && lacking.has(props.name) ? "Not on the record: measure it, and write it here." : undefined;
    const error = errors.get(props.name) ?? lack;
    return (
      <PlanField
        key={props.name}
        {...props}
        value={typed[props.name] ?? ""}
        {...(error === undefined ? {} : { error })}
      />
    );
  };
  const wheel = page.fields.filter(({ name }) => !/-[xyz]$/.test(name));
  const points = page.fields.filter(({ name }) => /-[xyz]$/.test(name));
  const known = points.filter(({ si }) => si !== undefined).length;
  return (
    <form action={here} className="grid gap-8">
      <section aria-labelledby="wanted" className="grid gap-4">
        <SectionHead id="wanted" title="What is wanted" />
        <div className="grid max-w-3xl gap-4 sm:grid-cols-2">
          <div className="grid content-start gap-1">
            <label htmlFor={fieldId("side")} className="font-semibold">
              Front wheel
            </label>
            <select id={fieldId("side")} name="side" defaultValue={page.side} className="field">
              <option value="left">{words.left}</option>
              <option value="right">{words.right}</option>
            </select>
          </div>
          {targetFields.map(({ name, label, hint }) => field({ name, label, hint: `For example ${hint}` }))}
        </div>
      </section>
      <section aria-labelledby="adjusters" className="grid gap-6">
        <SectionHead id="adjusters" title="What can be adjusted" />
        <p className="max-w-prose text-small">
          Fill in what this car has; leave the rest empty. The record says of the upper arm:{" "}
          {page.adjustments.upper || "nothing"}; of the lower: {page.adjustments.lower || "nothing"}.
        </p>
        {offeredAdjusters.map((one) => (
          <fieldset key={one.name} className="grid max-w-3xl gap-4 sm:grid-cols-2">
            <legend className="pb-1 font-semibold">{one.title}</legend>
            <p className="text-fine text-soft sm:col-span-2">{one.hint}</p>
            {one.fields.map(({ name, label, hint, unit }) =>
              field({ name, label: unit === "" ? label : `${label}, ${unit}`, hint }),
            )}
            {one.directed
              ? field({
                  name: `${one.name}-direction`,
                  label: "A shim moves the pivots",
                  hint: "As said at the car",
                  options: shimDirections,
                })
              : null}
          </fieldset>
        ))}
      </section>
      <section aria-labelledby="geometry" className="grid gap-4">
        <SectionHead id="geometry" title="The geometry it is worked out from" />
        <p className="max-w-prose text-small">
          {known} of {points.length} hardpoint figures are on the record. Millimetres: x forward of the front
          axle, y out from the car's middle, z above the ground, with the car level at ride height.
        </p>
        <div className="grid max-w-3xl gap-4 sm:grid-cols-2">
          {wheel.map(({ name, label, unit, toe, from }) =>
            field({ name, label: toe ? label : `${label}, ${unit}`, hint: sayGiven(from) }),
          )}
        </div>
        <details open={known < points.length}>
          <summary className="inline-flex min-h-11 cursor-pointer items-center font-semibold">
            Hardpoints
          </summary>
          <div className="grid grid-cols-3 gap-3 pt-2">
            {points.map(({ name, label, from }) => field({ name, label, hint: sayGiven(from) }))}
          </div>
        </details>
      </section>
      <div>
        <Button weight="mark">Plan it</Button>
      </div>
    </form>
  );
}
