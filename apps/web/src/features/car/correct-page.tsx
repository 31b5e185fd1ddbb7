import { TextArea, TextField } from "../../components/form/form-field";
import { correctCar } from "./correct-action";
import { type PartProps, RecordForm, RecordFrame } from "./edit/record-frame";
import { dateHint } from "./edit/words";

/** When a car was built and first registered, and what is remarked of it. */
export function CorrectPage({ club, car }: Pick<PartProps, "club" | "car">) {
  const { built, firstRegistered, remarks } = car;
  return (
    <RecordFrame club={club} car={car} title="Correct the record" section="facts">
      <RecordForm
        club={club}
        car={car}
        action={correctCar.bind(null, club.slug, car.reference)}
        submit="Save"
        section="facts"
        opened={{ built, firstRegistered, remarks }}
        labels={{ built: "Built", firstRegistered: "First registered", remarks: "Remarks" }}
      >
        <TextField name="built" label="Built" value={built} hint={dateHint} maxLength={60} />
        <TextField
          name="firstRegistered"
          label="First registered"
          value={firstRegistered}
          hint={dateHint}
          maxLength={60}
        />
        <TextArea name="remarks" label="Remarks" value={remarks} maxLength={4_000} />
      </RecordForm>
    </RecordFrame>
  );
}
