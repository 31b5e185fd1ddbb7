"use client";
import type { Characteristic, FastenerDraft, SubmissionContent } from "@trunnion/register";
import { Button } from "../../components/button";
import { fieldId } from "../../components/form/field-id";
import { ChoiceField, TextArea, TextField } from "../../components/form/form-field";
import { at, BeforeField, type ChangeFieldsProps, type LineProps, labelsOf, optionsOf } from "./before-field";
import { lineName } from "./line-name";

export type { ChangeFieldsProps };

/** Units whose sign is a word of the sentence around it. */
const spelt: Readonly<Record<string, string>> = { in: "inches" };

/** What to write, in the owner's units. */
function hintOf(characteristic: Characteristic, units: SubmissionContent["units"]): string {
  const none = characteristic.removable ? ' Or "not fitted".' : "";
  if (characteristic.kind === "quantity") {
    if (characteristic.notation === "toe") return `E.g. 0°12' toe-in, or 2 mm toe-in per side.${none}`;
    const unit = spelt[characteristic.units[units]] ?? characteristic.units[units];
    return unit === "" ? `A number.${none}` : `A bare number is in ${unit}; other units are read too.${none}`;
  }
  if (characteristic.kind === "designation") {
    const example = {
      thread: "M10x1.5 or 5/16 UNF",
      grade: "8.8 or 10.9",
      tyre: "175/70 R 13",
      wheel: "5½J x 14 ET 20",
    };
    return `E.g. ${example[characteristic.designation]}.${none}`;
  }
  return none.trim();
}

function AfterField({
  characteristic,
  change,
  place,
  content,
  of,
}: LineProps & { readonly characteristic: Characteristic }) {
  const name = at(of, `changes.${place}.after`);
  const hint = hintOf(characteristic, content.units);
  const told = hint === "" ? {} : { hint };
  if (characteristic.kind !== "choice")
    return <TextField name={name} label="On it now" value={change.after} autoComplete="off" {...told} />;
  const labels = labelsOf(characteristic);
  const known = change.after === "" || labels.includes(change.after) ? labels : [change.after, ...labels];
  return (
    <ChoiceField
      name={name}
      label="On it now"
      value={change.after}
      options={[{ value: "", label: "Choose" }, ...optionsOf(known)]}
    />
  );
}

function ChangeLine(props: LineProps) {
  const { change, place, book, sideWords, of } = props;
  const characteristic = book.find(change.characteristic);
  const name = lineName(change, book, sideWords);
  const left = props.modification.changes.find(
    (one) => one.characteristic === change.characteristic && one.side === "left",
  );
  return (
    <li className="grid gap-3 border-hair border-b pb-5">
      <fieldset className="grid gap-3 border-0 p-0 sm:grid-cols-2">
        <legend className="flex w-full items-center justify-between gap-4 pb-1 font-semibold text-lead sm:col-span-2">
          {name}
        </legend>
        <input type="hidden" name={at(of, `changes.${place}.characteristic`)} value={change.characteristic} />
        <input type="hidden" name={at(of, `changes.${place}.side`)} value={change.side} />
        {characteristic === undefined ? null : (
          <>
            <AfterField {...props} characteristic={characteristic} />
            <BeforeField {...props} characteristic={characteristic} />
          </>
        )}
      </fieldset>
      <div className="flex flex-wrap gap-3">
        {change.side === "right" && left !== undefined ? (
          <Button name="do" value={`same:${of}:${place}`}>
            Same as {sideWords.left.toLowerCase()}
            <span className="sr-only">: {name}</span>
          </Button>
        ) : null}
        <Button name="do" value={`remove:${of}:${place}`}>
          Take out<span className="sr-only"> {name}</span>
        </Button>
      </div>
    </li>
  );
}

interface FastenerProps {
  readonly fastener: FastenerDraft;
  readonly of: number;
  readonly place: number;
}

function Fastener({ fastener, of, place }: FastenerProps) {
  const field = (part: keyof FastenerDraft) => ({
    name: at(of, `fasteners.${place}.${part}`),
    value: fastener[part],
  });
  return (
    <li className="grid gap-3 border-hair border-b pb-5">
      <fieldset className="grid gap-3 border-0 p-0 sm:grid-cols-3">
        <legend className="pb-1 font-semibold">Fastener {place + 1}</legend>
        <TextField {...field("place")} label="Where" hint="E.g. rear link to bracket, left." />
        <TextField {...field("thread")} label="Thread" hint="E.g. M10x1.5 or 5/16 UNF." />
        <TextField {...field("grade")} label="Grade" hint="As stamped on the head." />
        <TextField {...field("length")} label="Length under the head" />
        <TextField {...field("spacerStack")} label="Spacers it carries" hint="Height of the stack." />
        <TextField {...field("count")} label="How many" inputMode="numeric" />
      </fieldset>
      <div>
        <Button name="do" value={`removeFastener:${of}:${place}`}>
          Take out<span className="sr-only"> fastener {place + 1}</span>
        </Button>
      </div>
    </li>
  );
}

const yesNo = [
  { value: "", label: "Not said" },
  { value: "yes", label: "Yes" },
  { value: "no", label: "No" },
];

/** What was changed, part by part. */
export function ChangeLines(props: ChangeFieldsProps) {
  return (
    <ol className="grid gap-6" id={fieldId(at(props.of, "changes"))} aria-label="Parts changed">
      {props.modification.changes.map((change, place) => (
        <ChangeLine
          key={`${change.characteristic} ${change.side}`}
          {...props}
          change={change}
          place={place}
        />
      ))}
    </ol>
  );
}

/** When, from where, why and with what it was changed. */
export function ChangeCircumstances({
  modification,
  of,
  content: { units },
}: Pick<ChangeFieldsProps, "modification" | "of" | "content">) {
  return (
    <div className="grid gap-8">
      <div className="grid gap-5 sm:grid-cols-2">
        <TextField
          name={at(of, "fitted")}
          label="Fitted"
          value={modification.fitted}
          hint="As far as you know: 14 Nov 2026, 3/98, 1998, c. 1985, before 1990."
        />
        <TextField
          name={at(of, "odometer")}
          label="Odometer"
          value={modification.odometer}
          hint={`A bare number is in ${units === "metric" ? "kilometres" : "miles"}.`}
        />
        <TextField
          name={at(of, "donor")}
          label="Donor or supplier"
          value={modification.donor}
          hint="The car or catalogue it is from; no names of people."
        />
        <ChoiceField
          name={at(of, "reversible")}
          label="Can it be put back?"
          value={modification.reversible}
          options={yesNo}
        />
        <ChoiceField
          name={at(of, "oldPartKept")}
          label="Is the old part kept?"
          value={modification.oldPartKept}
          options={yesNo}
        />
      </div>
      <TextArea name={at(of, "reason")} label="Why" value={modification.reason} rows={2} />
      <TextArea name={at(of, "note")} label="Anything else" value={modification.note} rows={3} />
      <section aria-labelledby={`fasteners-${of}`} className="grid gap-4">
        <h3 id={`fasteners-${of}`} className="text-lead">
          Fasteners
        </h3>
        <ol className="grid gap-6 empty:hidden">
          {modification.fasteners.map((fastener, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a fastener has no name of its own, and its fields are kept by place
            <Fastener key={place} fastener={fastener} of={of} place={place} />
          ))}
        </ol>
        <div>
          <Button name="do" value={`fastener:${of}`}>
            Add a fastener
          </Button>
        </div>
      </section>
    </div>
  );
}
