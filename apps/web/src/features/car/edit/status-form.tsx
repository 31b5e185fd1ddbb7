import { ChoiceField, TextField } from "../../../components/form/form-field";
import { removeStatus, saveStatus } from "./action";
import { ProvenanceFields } from "./provenance-fields";
import { type PartProps, RecordForm, RecordFrame, RemoveForm } from "./record-frame";
import { dateHint, statusOptions } from "./words";

/** The form over what has become of a car. */
export function StatusForm({ club, car, row: id }: PartProps) {
  const row = car.statuses.find((one) => one.id === id);
  const opened = row && {
    status: row.status,
    from: row.from,
    to: row.to,
    source: row.source,
    locus: row.locus,
    trust: row.trust,
  };
  return (
    <RecordFrame
      club={club}
      car={car}
      title={row === undefined ? "Add a status" : "Correct a status"}
      section="status"
    >
      <RecordForm
        club={club}
        car={car}
        action={saveStatus.bind(null, club.slug, car.reference, row?.id)}
        submit={row === undefined ? "Add it" : "Save"}
        section="status"
        opened={opened ?? {}}
        labels={{ from: "Since", to: "Until" }}
      >
        <div className="grid gap-4 sm:grid-cols-3">
          <ChoiceField name="status" label="Status" value={row?.status ?? "inUse"} options={statusOptions} />
          <TextField name="from" label="Since" value={row?.from ?? ""} hint={dateHint} maxLength={60} />
          <TextField
            name="to"
            label="Until"
            value={row?.to ?? ""}
            hint="Empty for the present status, which ends the one before. A month or year is taken to its end."
            maxLength={60}
          />
        </div>
        <ProvenanceFields sources={car.sources} {...(row === undefined ? {} : { known: row })} />
      </RecordForm>
      {row === undefined ? null : (
        <RemoveForm
          club={club}
          car={car}
          action={removeStatus.bind(null, club.slug, car.reference, row.id)}
          title="Take it away"
          text="For a status that never was. Where it was the present one, the one it ended holds again."
        />
      )}
    </RecordFrame>
  );
}
