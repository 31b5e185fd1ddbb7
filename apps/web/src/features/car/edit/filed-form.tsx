import { editPartPath } from "../../../lib/path";
import { fileCar } from "./action";
import { NumberFields } from "./number-fields";
import { type PartProps, RecordForm, RecordFrame } from "./record-frame";

export interface FiledFormProps extends PartProps {
  /** What was typed before a number was checked without a script. */
  readonly typed: { readonly chassis?: string; readonly series?: string };
}

/** The form over the number and series a car is filed under. */
export function FiledForm({ club, car, typed }: FiledFormProps) {
  return (
    <RecordFrame club={club} car={car} title="Number and series" section="filed">
      <RecordForm
        club={club}
        car={car}
        action={fileCar.bind(null, club.slug, car.reference)}
        submit="Save"
        section="filed"
        opened={{ chassis: car.chassis, series: car.series }}
        labels={{ chassis: "Chassis number", series: "Series" }}
      >
        <NumberFields
          series={car.allSeries}
          chassis={typed.chassis ?? car.chassis}
          chosen={typed.series ?? car.series}
          checkPath={editPartPath(club.slug, car.reference, "filed")}
        />
      </RecordForm>
    </RecordFrame>
  );
}
