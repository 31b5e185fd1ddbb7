"use client";
import type { SettingSheetForm } from "@trunnion/api";
import { Button } from "../../components/button";
import { useForm } from "../../components/form/edit-form";
import { ChoiceField } from "../../components/form/form-field";
import { instrumentsPath } from "../../lib/path";
import { dimensionWords, InstrumentFields } from "../instrument/instrument-fields";

export interface InstrumentsProps {
  readonly form: SettingSheetForm;
  /** What the sheet's readings are: one instrument each. */
  readonly dimensions: readonly string[];
}

/** What the readings were taken with; their uncertainty follows from it once the sheet is accepted. */
export function Instruments({ form, dimensions }: InstrumentsProps) {
  const offered = dimensions.filter((one) => form.instruments.some(({ dimension }) => dimension === one));
  return (
    <fieldset className="grid max-w-3xl gap-4 sm:grid-cols-2">
      <legend className="pb-1 font-semibold">Read with</legend>
      {offered.map((dimension) => (
        <ChoiceField
          key={dimension}
          name={`instrument-${dimension}`}
          label={dimensionWords[dimension] ?? dimension}
          options={[
            { value: "", label: "not said" },
            ...form.instruments
              .filter((one) => one.dimension === dimension)
              .map(({ id, label, known }) => ({
                value: id,
                label: known === "" ? label : `${label}: ${known}`,
              })),
          ]}
        />
      ))}
      <p className="max-w-prose text-small text-soft sm:col-span-2">
        Each reading carries the uncertainty of what it was read with, and is judged inside or outside its
        limits by it. Of an instrument that is not said, only what the notation implies is known.{" "}
        <a href={instrumentsPath(form.club.slug)}>What is on the books</a>
      </p>
      <NewInstrument dimensions={dimensions} />
    </fieldset>
  );
}

const at = (part: string) => `instrument.${part}`;

/** An instrument the club has not got on its books yet; folded until it is asked for, or something in it is wrong. */
function NewInstrument({ dimensions }: Pick<InstrumentsProps, "dimensions">) {
  const { errors } = useForm();
  return (
    <details
      className="sm:col-span-2"
      open={Object.keys(errors).some((name) => name.startsWith("instrument."))}
    >
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">
        Another instrument, the club's or your own
      </summary>
      <div className="grid gap-4 pt-2 sm:grid-cols-2">
        <InstrumentFields at={at} dimensions={dimensions} />
        <div className="self-end">
          <Button name="step" value="instrument">
            Put it on the books
          </Button>
        </div>
      </div>
    </details>
  );
}
