"use client";
import { type AdvisingSeries, adviseOnNumber, type NumberAdvice } from "@trunnion/register";
import { type FormEvent, useState } from "react";
import { Button } from "../../../components/button";
import { ChoiceField, TextField, TickField } from "../../../components/form/form-field";

export interface NumberFieldsProps {
  readonly series: readonly (AdvisingSeries & { readonly name: string })[];
  readonly chassis: string;
  readonly chosen: string;
  /** Page of the form, which checks the number where no script does. */
  readonly checkPath: string;
}

/** What is wrong with the number typed, and what could be meant; says plainly when nothing is. */
export function AdviceText({ advice, typed }: { readonly advice: NumberAdvice; readonly typed: string }) {
  if (typed.trim() === "") return <p className="text-soft">Write the number as it is stamped.</p>;
  if (advice.problem === undefined)
    return <p>The number fits{advice.serial === undefined ? "" : " the series"}.</p>;
  const proposed = advice.proposals.map(({ number, because }) => `${number} (${because})`).join("; ");
  return (
    <>
      <p className="font-semibold">{advice.problem}.</p>
      <p>{proposed === "" ? "Nothing near it fits either." : `Could be meant: ${proposed}.`}</p>
      <p className="text-soft">It can be saved as it is: the numbers page then asks about it.</p>
    </>
  );
}

/** Chassis number and series, with what is wrong with the number while it is typed. */
export function NumberFields({ series, chassis, chosen, checkPath }: NumberFieldsProps) {
  const [typed, setTyped] = useState({ chassis, series: chosen });
  const follow = ({ target }: FormEvent) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    const { name, value } = target;
    if (name === "chassis" || name === "series") setTyped((before) => ({ ...before, [name]: value }));
  };
  const advice = adviseOnNumber(typed.chassis, series, typed.series === "" ? undefined : typed.series);
  const options = [
    { value: "", label: "Not settled" },
    ...series.map(({ slug, name }) => ({ value: slug, label: name })),
  ];
  return (
    <div className="grid gap-4" onInput={follow}>
      <div className="grid gap-4 sm:grid-cols-2">
        <TextField name="chassis" label="Chassis number" value={chassis} maxLength={40} autoComplete="off" />
        <ChoiceField name="series" label="Series" value={chosen} options={options} />
      </div>
      <div role="status" className="max-w-prose border-line border-l-4 pl-4 text-small">
        <AdviceText advice={advice} typed={typed.chassis} />
      </div>
      {/* Not merely hidden: the first button of a form is what the Enter key presses. */}
      <noscript>
        <Button formAction={checkPath} formMethod="get">
          Check the number
        </Button>
      </noscript>
      <TickField
        name="another"
        label="Another car that claims this number"
        hint="Only where a car of this number is on the register already, and this is not that one."
      />
    </div>
  );
}
