import { EditForm } from "../../components/form/edit-form";
import { TextArea, TextField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { carPath } from "../../lib/path";
import { correctCar } from "./correct-action";

export interface CorrectPageProps {
  readonly club: ClubFace;
  readonly car: {
    readonly reference: string;
    readonly chassis: string;
    readonly version: number;
    readonly built: string | null;
    readonly firstRegistered: string | null;
    readonly remarks: string | null;
  };
}

const dateHint = "As far as it is known: 1971, 3/72, 12.3.1972 (day first), c. 1971, before March 1972.";

/** When a car was built and first registered, and what is remarked of it. */
export function CorrectPage({ club, car }: CorrectPageProps) {
  const back = { href: carPath(club.slug, car.reference), label: "The car, without saving" };
  return (
    <>
      <PageHead
        title="Correct the record"
        back={{ href: back.href, label: car.chassis }}
        plate={<Plate chassis={car.chassis} />}
      />
      <EditForm
        action={correctCar.bind(null, club.slug, car.reference)}
        submit="Save"
        version={car.version}
        cancel={back}
        labels={{ built: "Built", firstRegistered: "First registered", remarks: "Remarks", reason: "Why" }}
      >
        <TextField name="built" label="Built" value={car.built ?? ""} hint={dateHint} maxLength={60} />
        <TextField
          name="firstRegistered"
          label="First registered"
          value={car.firstRegistered ?? ""}
          hint={dateHint}
          maxLength={60}
        />
        <TextArea name="remarks" label="Remarks" value={car.remarks ?? ""} maxLength={4_000} />
        <TextField
          name="reason"
          label="Why"
          hint="For the journal: what shows that it was so."
          maxLength={500}
        />
      </EditForm>
    </>
  );
}
