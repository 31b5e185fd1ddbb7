import { ChoiceField, TextField } from "../../../components/form/form-field";
import { removeIdentity, saveIdentity } from "./action";
import { ProvenanceFields } from "./provenance-fields";
import { type PartProps, RecordForm, RecordFrame, RemoveForm } from "./record-frame";
import { dateHint, kindOptions, standingOptions } from "./words";

/** The form over a number or mark of a car. */
export function IdentityForm({ club, car, row: id }: PartProps) {
  const row = car.identities.find((one) => one.id === id);
  const title = row === undefined ? "Add a number or mark" : `Correct ${row.number}`;
  const opened = row && {
    kind: row.kind,
    number: row.number,
    standing: row.standing,
    from: row.from,
    to: row.to,
    source: row.source,
    locus: row.locus,
    trust: row.trust,
  };
  return (
    <RecordFrame club={club} car={car} title={title} section="identity">
      <RecordForm
        club={club}
        car={car}
        action={saveIdentity.bind(null, club.slug, car.reference, row?.id)}
        submit={row === undefined ? "Add it" : "Save"}
        section="identity"
        opened={opened ?? {}}
        labels={{ number: "Number", from: "Borne from", to: "Borne until" }}
      >
        <div className="grid gap-4 sm:grid-cols-3">
          <ChoiceField name="kind" label="Kind" value={row?.kind ?? "registration"} options={kindOptions} />
          <TextField name="number" label="Number" value={row?.number ?? ""} maxLength={60} />
          <ChoiceField
            name="standing"
            label="Standing"
            value={row?.standing ?? "accepted"}
            options={standingOptions}
          />
        </div>
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField name="from" label="Borne from" value={row?.from ?? ""} hint={dateHint} maxLength={60} />
          <TextField
            name="to"
            label="Borne until"
            value={row?.to ?? ""}
            hint="Empty while it bears it, or where nobody knows."
            maxLength={60}
          />
        </div>
        <ProvenanceFields sources={car.sources} {...(row === undefined ? {} : { known: row })} />
      </RecordForm>
      {row === undefined ? null : (
        <RemoveForm
          club={club}
          car={car}
          action={removeIdentity.bind(null, club.slug, car.reference, row.id)}
          title="Take it away"
          text="For a number that was never on this car. One it bore once gets a day until which it did instead. The journal keeps what is taken away."
        />
      )}
    </RecordFrame>
  );
}
