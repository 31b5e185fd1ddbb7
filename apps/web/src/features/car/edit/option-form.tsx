import { TextField, TickField } from "../../../components/form/form-field";
import { setOptions } from "./action";
import { type PartProps, RecordForm, RecordFrame } from "./record-frame";

/** The form over the options a car was built with. */
export function OptionForm({ club, car }: PartProps) {
  const offered = car.allSeries.find(({ slug }) => slug === car.series)?.options ?? [];
  const others = car.options.filter((code) => !offered.some((one) => one.code === code));
  return (
    <RecordFrame club={club} car={car} title="Options it was built with" section="option">
      <RecordForm
        club={club}
        car={car}
        action={setOptions.bind(null, club.slug, car.reference)}
        submit="Save"
        section="option"
        opened={{ options: car.options.toSorted().join(", ") }}
        labels={{ others: "Other codes" }}
      >
        {offered.length === 0 ? (
          <p>
            No options are recorded for {car.seriesName === "" ? "a car without a series" : car.seriesName}.
          </p>
        ) : (
          <fieldset>
            <legend className="font-semibold">Offered on {car.seriesName}</legend>
            {offered.map(({ code, label }) => (
              <TickField
                key={code}
                name="options[]"
                of={code}
                label={`${code}: ${label}`}
                ticked={car.options.includes(code)}
              />
            ))}
          </fieldset>
        )}
        <TextField
          name="others"
          label="Other codes"
          value={others.join(", ")}
          hint="As the build record writes them, apart by commas."
          maxLength={200}
        />
      </RecordForm>
    </RecordFrame>
  );
}
