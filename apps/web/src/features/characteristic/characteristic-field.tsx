"use client";
import { designationKinds, dimensionNames, dimensions } from "@trunnion/calc";
import { assemblies, assemblyLabels, type Characteristic, printLimit } from "@trunnion/register";
import { useState } from "react";
import { ChoiceField, TextArea, TextField, TickField } from "../../components/form/form-field";

const kinds = [
  { value: "choice", label: "one of a list" },
  { value: "quantity", label: "a quantity with its unit" },
  { value: "designation", label: "a trade designation" },
  { value: "text", label: "a short text" },
  { value: "date", label: "a date" },
] as const;
type Kind = Characteristic["kind"];

/** Empty rows to write further choices in. */
const SPARE = 4;

/** Everything a form says of a characteristic; of one that has values, what their reading depends on stays as it is. */
export function CharacteristicFields({
  of,
  fixed,
}: {
  readonly of?: Characteristic;
  readonly fixed: boolean;
}) {
  const [kind, setKind] = useState<Kind>(of?.kind ?? "choice");
  return (
    <>
      <TextField
        name="label"
        label="Label"
        value={of?.label ?? ""}
        maxLength={80}
        required
        hint="As lists and sheets say it: Fog lamps."
      />
      <ChoiceField
        name="assembly"
        label="Assembly"
        value={of?.assembly ?? "body"}
        options={assemblies.map((assembly) => ({ value: assembly, label: assemblyLabels[assembly] }))}
      />
      <TextArea
        name="help"
        label="What is meant"
        value={of?.help ?? ""}
        maxLength={400}
        rows={2}
        hint="And how to see or measure it."
      />
      <TextField
        name="also"
        label="Other names"
        value={(of?.also ?? []).join(", ")}
        maxLength={400}
        hint="That people write in tables, parted by commas."
      />
      {fixed && of !== undefined ? (
        <Fixed of={of} />
      ) : (
        <>
          <fieldset className="grid gap-1">
            <legend className="font-semibold">Kind</legend>
            {kinds.map(({ value, label }) => (
              <label key={value} className="inline-flex min-h-11 cursor-pointer items-center gap-3">
                <input
                  type="radio"
                  name="kind"
                  value={value}
                  defaultChecked={value === kind}
                  onChange={() => setKind(value)}
                  className="size-5 shrink-0 accent-ink"
                />
                {label}
              </label>
            ))}
          </fieldset>
          <div className="grid">
            <TickField name="sided" label="Recorded for each side" ticked={of?.sided ?? false} />
            <TickField
              name="setting"
              label="Adjusted or worn, and measured: not a part"
              ticked={of?.setting ?? false}
            />
            <TickField
              name="removable"
              label="May be left off: “not fitted” is an answer"
              ticked={of?.removable ?? false}
            />
          </div>
        </>
      )}
      <Particulars kind={kind} {...(of === undefined ? {} : { of })} fixed={fixed} />
    </>
  );
}

const yes = (answer: boolean) => (answer ? "yes" : "no");

/** What no longer changes is sent along as it is. */
function Fixed({ of }: { readonly of: Characteristic }) {
  const { kind, sided, setting, removable } = of;
  const hidden = { kind, sided: yes(sided), setting: yes(setting), removable: yes(removable) };
  const name = kinds.find(({ value }) => value === kind)?.label ?? kind;
  return (
    <p className="max-w-prose text-soft">
      It is {name}
      {sided ? ", recorded for each side" : ""}
      {removable ? ", and may be left off" : ""}. That cannot change any more: values are recorded.
      {Object.entries(hidden).map(([field, value]) => (
        <input key={field} type="hidden" name={field} value={value} />
      ))}
    </p>
  );
}

interface ParticularsProps {
  readonly kind: Kind;
  readonly of?: Characteristic;
  readonly fixed: boolean;
}

function Particulars({ kind, of, fixed }: ParticularsProps) {
  switch (kind) {
    case "choice":
      return <Choices {...(of?.kind === "choice" ? { of } : {})} />;
    case "quantity":
      return <Quantity {...(of?.kind === "quantity" ? { of } : {})} fixed={fixed} />;
    case "designation":
      return fixed && of?.kind === "designation" ? (
        <input type="hidden" name="designation" value={of.designation} />
      ) : (
        <ChoiceField
          name="designation"
          label="Of what"
          value={of?.kind === "designation" ? of.designation : "thread"}
          options={designationKinds.map((one) => ({ value: one, label: one }))}
        />
      );
    case "text":
      return (
        <TextField
          name="maximumLength"
          label="Longest text, in characters"
          value={of?.kind === "text" ? String(of.maximumLength) : "120"}
          inputMode="numeric"
          maxLength={4}
        />
      );
    case "date":
      return null;
  }
}

function Choices({ of }: { readonly of?: Extract<Characteristic, { kind: "choice" }> }) {
  const rows = [...(of?.choices ?? []), ...Array.from({ length: SPARE }, () => ({ code: "", label: "" }))];
  return (
    <fieldset className="grid gap-2">
      <legend className="pb-2 text-lead">Choices</legend>
      <p className="text-small text-soft">
        At least two. The code stays for good and is made of the label where it is empty.
      </p>
      {rows.map((choice, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their place only
        <div key={index} className="grid gap-x-4 gap-y-2 border-hair border-t py-2 sm:grid-cols-3">
          <TextField
            name={`choices.${index}.label`}
            label={`Choice ${index + 1}`}
            value={choice.label}
            maxLength={80}
          />
          <TextField
            name={`choices.${index}.code`}
            label={`Code ${index + 1}`}
            value={choice.code}
            maxLength={40}
          />
          <TextField
            name={`choices.${index}.also`}
            label={`Other spellings ${index + 1}`}
            value={("also" in choice ? (choice.also ?? []) : []).join(", ")}
            maxLength={400}
          />
        </div>
      ))}
    </fieldset>
  );
}

function Quantity({
  of,
  fixed,
}: {
  readonly of?: Extract<Characteristic, { kind: "quantity" }>;
  readonly fixed: boolean;
}) {
  const bound = (si: number | undefined) => (of === undefined || si === undefined ? "" : printLimit(of, si));
  return (
    <fieldset className="grid gap-4">
      <legend className="pb-2 text-lead">Quantity</legend>
      {fixed && of !== undefined ? (
        <>
          <input type="hidden" name="dimension" value={of.dimension} />
          <input type="hidden" name="toe" value={of.notation === "toe" ? "yes" : "no"} />
        </>
      ) : (
        <ChoiceField
          name="dimension"
          label="Dimension"
          value={of?.dimension ?? "length"}
          options={dimensions
            .filter((dimension) => dimension !== "text")
            .map((dimension) => ({ value: dimension, label: dimensionNames[dimension] }))}
        />
      )}
      <div className="grid gap-4 sm:grid-cols-2">
        <TextField name="metric" label="Metric unit" value={of?.units.metric ?? "mm"} maxLength={40} />
        <TextField name="imperial" label="Imperial unit" value={of?.units.imperial ?? "in"} maxLength={40} />
        <TextField
          name="minimum"
          label="Least that can be believed"
          value={bound(of?.minimum)}
          maxLength={40}
          hint="With its unit; empty for no bound."
        />
        <TextField
          name="maximum"
          label="Most that can be believed"
          value={bound(of?.maximum)}
          maxLength={40}
        />
        <TextField
          name="usualLowest"
          label="Lowest that is usual"
          value={bound(of?.usual?.lowest)}
          maxLength={40}
          hint="Outside of what is usual a figure is taken, and asked about. Both, or neither."
        />
        <TextField
          name="usualHighest"
          label="Highest that is usual"
          value={bound(of?.usual?.highest)}
          maxLength={40}
        />
      </div>
    </fieldset>
  );
}
