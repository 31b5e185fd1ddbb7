import type { SetupPlanPage } from "@trunnion/api";
import {
  layoutOf,
  moveDirections,
  type OfferedAdjuster,
  type PlanLayout,
  type RecordedAdjustment,
  targetsOf,
} from "@trunnion/register";
import type { ReactNode } from "react";
import { Button } from "../../components/button";
import { fieldId } from "../../components/form/field-id";
import { SectionHead } from "../../components/page-head";
import { PlanField, type PlanFieldProps } from "./plan-field";
import { sayGiven } from "./say";

export interface PlanFormProps {
  readonly page: SetupPlanPage;
  readonly layout: Extract<PlanLayout, { readonly known: "planned" }>;
  readonly words: { readonly left: string; readonly right: string };
  readonly typed: Readonly<Record<string, string>>;
  readonly here: string;
}

type Draw = (props: Omit<PlanFieldProps, "value" | "error">) => ReactNode;

/** What is wanted, what can be adjusted, and the geometry; sent by address, so that it works without a script. */
export function PlanForm({ page, layout, words, typed, here }: PlanFormProps) {
  const planned = layoutOf(page.axle, layout.code);
  if (planned === undefined) return null;
  const errors = errorsOf(page);
  const draw: Draw = (props) => {
    const error = errors.get(props.name);
    const value = typed[props.name] ?? "";
    return (
      <PlanField key={props.name} {...props} value={value} {...(error === undefined ? {} : { error })} />
    );
  };
  const used = ({ fields, name }: OfferedAdjuster) =>
    [...fields.map((field) => field.name), `${name}-direction`].some(
      (one) => (typed[one] ?? "") !== "" || errors.has(one),
    );
  return (
    <form action={here} className="grid gap-8">
      <input type="hidden" name="axle" value={page.axle} />
      {layout.typed ? <input type="hidden" name="layout" value={layout.code} /> : null}
      <section aria-labelledby="wanted" className="grid gap-4">
        <SectionHead id="wanted" title="What is wanted" />
        <div className="grid max-w-3xl gap-4 sm:grid-cols-2 wide:max-w-none wide:grid-cols-4">
          <SideChoice axle={page.axle} side={page.side} words={words} />
          {targetsOf(planned).map(({ name, label, hint }) =>
            draw({ name, label, hint: `For example ${hint}` }),
          )}
        </div>
      </section>
      <section aria-labelledby="adjusters" className="grid gap-3">
        <SectionHead id="adjusters" title="What can be adjusted" />
        <p className="max-w-prose text-small">
          {layout.label}
          {layout.typed ? ", as you said; the record does not say. " : ". "}
          Open what this car has and fill it in; leave the rest. {sayRecorded(page.adjustments)}
        </p>
        {planned.adjusters.map((one) => (
          <Adjuster
            key={one.name}
            adjuster={one}
            open={used(one) || isRecorded(one, page.adjustments)}
            draw={draw}
          />
        ))}
      </section>
      <Geometry page={page} draw={draw} errors={errors} />
      <div>
        <Button weight="mark">Plan it</Button>
      </div>
    </form>
  );
}

function errorsOf({ problems, lacking, asked }: SetupPlanPage): ReadonlyMap<string, string> {
  const lacks = asked
    ? lacking.map((name) => [name, "Not on the record: measure it, and write it here."] as const)
    : [];
  return new Map([...lacks, ...problems.map(({ field, message }) => [field, message] as const)]);
}

function sayRecorded(adjustments: readonly RecordedAdjustment[]): string {
  return adjustments
    .map(({ label, words }) => `${label}: ${words === "" ? "nothing on the record" : words.toLowerCase()}.`)
    .join(" ");
}

const isRecorded = ({ recorded }: OfferedAdjuster, adjustments: readonly RecordedAdjustment[]) =>
  recorded !== undefined &&
  adjustments.some(({ key, code }) => key === recorded.key && code === recorded.code);

function SideChoice({
  axle,
  side,
  words,
}: Pick<SetupPlanPage, "axle" | "side"> & Pick<PlanFormProps, "words">) {
  return (
    <div className="grid content-start gap-1">
      <label htmlFor={fieldId("side")} className="font-semibold">
        {axle === "front" ? "Front" : "Rear"} wheel
      </label>
      <select id={fieldId("side")} name="side" defaultValue={side} className="field">
        <option value="left">{words.left}</option>
        <option value="right">{words.right}</option>
      </select>
    </div>
  );
}

interface AdjusterProps {
  readonly adjuster: OfferedAdjuster;
  readonly open: boolean;
  readonly draw: Draw;
}

function Adjuster({ adjuster, open, draw }: AdjusterProps) {
  const { name, title, hint, fields, directed } = adjuster;
  return (
    <details open={open} className="border-line border-t">
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">{title}</summary>
      <fieldset className="grid max-w-3xl gap-4 pb-4 sm:grid-cols-2 wide:max-w-none wide:grid-cols-4">
        <legend className="sr-only">{title}</legend>
        <p className="col-span-full text-fine text-soft">{hint}</p>
        {fields.map(({ name: field, label, hint: help, unit }) =>
          draw({ name: field, label: unit === "" ? label : `${label}, ${unit}`, hint: help }),
        )}
        {directed === undefined
          ? null
          : draw({
              name: `${name}-direction`,
              label: directed,
              hint: "As said at the car",
              options: moveDirections,
            })}
      </fieldset>
    </details>
  );
}

interface GeometryProps {
  readonly page: SetupPlanPage;
  readonly draw: Draw;
  readonly errors: ReadonlyMap<string, string>;
}

function Geometry({ page, draw, errors }: GeometryProps) {
  const wheel = page.fields.filter(({ point }) => !point);
  const points = page.fields.filter(({ point }) => point);
  const known = points.filter(({ si }) => si !== undefined).length;
  return (
    <section aria-labelledby="geometry" className="grid gap-4">
      <SectionHead id="geometry" title="The geometry it is worked out from" />
      <p className="max-w-prose text-small">
        {known} of {points.length} hardpoint figures are on the record. Millimetres: x forward of the{" "}
        {page.axle} axle, y out from the car's middle, z above the ground, with the car level at ride height.
      </p>
      <div className="grid max-w-3xl gap-4 sm:grid-cols-2 wide:max-w-none wide:grid-cols-4">
        {wheel.map((field) => {
          const { name, label, unit, toe } = field;
          return draw({ name, label: toe ? label : `${label}, ${unit}`, hint: sayGiven(field) });
        })}
      </div>
      <details open={known < points.length || points.some(({ name }) => errors.has(name))}>
        <summary className="min-h-11 cursor-pointer py-2 font-semibold">Hardpoints</summary>
        <div className="grid grid-cols-3 gap-3 pt-2">
          {points.map((field) => draw({ name: field.name, label: field.label, hint: sayGiven(field) }))}
        </div>
      </details>
    </section>
  );
}
