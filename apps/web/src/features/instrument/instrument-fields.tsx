import { ChoiceField, TextField } from "../../components/form/form-field";

/** What instruments read, in the words of a form. */
export const dimensionWords: Readonly<Record<string, string>> = {
  angle: "Angles",
  length: "Heights and lengths",
  pressure: "Pressures",
  mass: "Corner weights",
};

export interface InstrumentFieldsProps {
  /** Name of the field of one part of an instrument. */
  readonly at: (part: string) => string;
  /** What it may read. */
  readonly dimensions: readonly string[];
  /** What the books say now; left out for a new one. */
  readonly texts?: Readonly<Record<string, string>>;
}

/** What is known of an instrument; the same fields for a new one and for one to correct. */
export function InstrumentFields({ at, dimensions, texts = {} }: InstrumentFieldsProps) {
  const now = (part: string) => (texts[part] === undefined ? {} : { value: texts[part] });
  return (
    <>
      <TextField
        name={at("label")}
        label="What it is"
        maxLength={80}
        hint="E.g. gravity gauge no. 2; no names of people."
        {...now("label")}
      />
      <ChoiceField
        name={at("dimension")}
        label="It reads"
        options={[
          ...(texts.dimension === undefined ? [{ value: "", label: "Choose" }] : []),
          ...dimensions.map((value) => ({ value, label: dimensionWords[value] ?? value })),
        ]}
        {...now("dimension")}
      />
      <TextField
        name={at("number")}
        label="Its number"
        maxLength={60}
        hint="As stamped on it or on its certificate."
        {...now("number")}
      />
      <TextField
        name={at("resolution")}
        label="Smallest step it shows"
        maxLength={60}
        hint="E.g. 0°05', 0.5 mm, 1 psi."
        {...now("resolution")}
      />
      <TextField
        name={at("uncertainty")}
        label="Uncertainty"
        maxLength={60}
        hint="Expanded, k = 2, from its certificate: ±0°10'. Empty where nobody knows it."
        {...now("uncertainty")}
      />
      <TextField name={at("calibratedOn")} label="Last calibrated" type="date" {...now("calibratedOn")} />
      <TextField
        name={at("calibratedUntil")}
        label="Calibration good until"
        type="date"
        hint="The last day. Empty where nobody says."
        {...now("calibratedUntil")}
      />
    </>
  );
}
