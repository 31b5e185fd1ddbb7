import { TextField } from "../../components/form/form-field";

/** What the form of a series shows of one there is. */
export interface SeriesTexts {
  readonly name: string;
  readonly ordinal: string;
  readonly numberPrefix: string;
  readonly numberDigits: string;
  readonly firstSerial: string;
  readonly lastSerial: string;
  readonly numberSuffixes: string;
  readonly builtFrom: string;
  readonly builtTo: string;
  readonly builtCount: string;
  readonly options: readonly { readonly code: string; readonly label: string }[];
}

export const emptySeries: SeriesTexts = {
  name: "",
  ordinal: "",
  numberPrefix: "",
  numberDigits: "4",
  firstSerial: "1",
  lastSerial: "",
  numberSuffixes: "",
  builtFrom: "",
  builtTo: "",
  builtCount: "",
  options: [],
};

export const seriesLabels: Readonly<Record<string, string>> = {
  marque: "Marque",
  slug: "Short name",
  name: "Name",
  ordinal: "Place in lists",
  numberPrefix: "Before the serial",
  numberDigits: "Digits of the serial",
  firstSerial: "First serial",
  lastSerial: "Last serial",
  numberSuffixes: "Endings",
  builtFrom: "Built from",
  builtTo: "Built to",
  builtCount: "How many were built",
};

/** Empty rows to write further options in. */
const SPARE = 3;

/** Name, number pattern, build dates and options of a series. */
export function SeriesFields({ texts }: { readonly texts: SeriesTexts }) {
  const rows = [...texts.options, ...Array.from({ length: SPARE }, () => ({ code: "", label: "" }))];
  return (
    <>
      <TextField
        name="name"
        label="Name"
        value={texts.name}
        maxLength={80}
        required
        hint="As people say it: Series 2."
      />
      <TextField
        name="ordinal"
        label="Place in lists"
        value={texts.ordinal}
        inputMode="numeric"
        maxLength={3}
        hint="A number; empty or 0 for last."
      />
      <fieldset className="grid gap-4">
        <legend className="pb-2 text-lead">Chassis numbers</legend>
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField
            name="numberPrefix"
            label="Before the serial"
            value={texts.numberPrefix}
            maxLength={12}
            hint="As stamped, with its dash: S2-."
          />
          <TextField
            name="numberDigits"
            label="Digits of the serial"
            value={texts.numberDigits}
            inputMode="numeric"
            maxLength={1}
            hint="Leading zeros included: 4 for 0123."
          />
          <TextField
            name="firstSerial"
            label="First serial"
            value={texts.firstSerial}
            inputMode="numeric"
            maxLength={9}
          />
          <TextField
            name="lastSerial"
            label="Last serial"
            value={texts.lastSerial}
            inputMode="numeric"
            maxLength={9}
          />
        </div>
        <TextField
          name="numberSuffixes"
          label="Endings"
          value={texts.numberSuffixes}
          maxLength={200}
          hint="That a number may have, parted by commas: R, L. Empty where there are none."
        />
      </fieldset>
      <fieldset className="grid gap-4">
        <legend className="pb-2 text-lead">Build</legend>
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField
            name="builtFrom"
            label="Built from"
            value={texts.builtFrom}
            maxLength={40}
            hint="A day, month or year."
          />
          <TextField name="builtTo" label="Built to" value={texts.builtTo} maxLength={40} hint="Included." />
        </div>
        <TextField
          name="builtCount"
          label="How many were built"
          value={texts.builtCount}
          inputMode="numeric"
          maxLength={9}
          hint="If it is known."
        />
      </fieldset>
      <fieldset className="grid gap-2">
        <legend className="pb-2 text-lead">Options the works offered</legend>
        <p className="text-small text-soft">
          An option without code and name is none: empty it to take it out.
        </p>
        {rows.map((option, index) => (
          <div
            // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their place only
            key={index}
            className="grid gap-x-4 gap-y-2 border-hair border-t py-2 sm:grid-cols-[10rem_1fr]"
          >
            <TextField
              name={`options.${index}.code`}
              label={`Code ${index + 1}`}
              value={option.code}
              maxLength={12}
            />
            <TextField
              name={`options.${index}.label`}
              label={`What it was ${index + 1}`}
              value={option.label}
              maxLength={80}
            />
          </div>
        ))}
      </fieldset>
    </>
  );
}
