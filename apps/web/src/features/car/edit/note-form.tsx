import { TextArea, TextField } from "../../../components/form/form-field";
import { removeNote, saveNote } from "./action";
import { ProvenanceFields } from "./provenance-fields";
import { type PartProps, RecordForm, RecordFrame, RemoveForm } from "./record-frame";
import { dateHint } from "./words";

/** The form over a note of a car's history. */
export function NoteForm({ club, car, row: id }: PartProps) {
  const row = car.notes.find((one) => one.id === id);
  const opened = row && {
    on: row.on,
    text: row.text,
    source: row.source,
    locus: row.locus,
    trust: row.trust,
  };
  return (
    <RecordFrame
      club={club}
      car={car}
      title={row === undefined ? "Add to its history" : "Correct a note"}
      section="note"
    >
      <RecordForm
        club={club}
        car={car}
        action={saveNote.bind(null, club.slug, car.reference, row?.id)}
        submit={row === undefined ? "Add it" : "Save"}
        section="note"
        opened={opened ?? {}}
        labels={{ on: "When", text: "What happened" }}
      >
        <TextField name="on" label="When" value={row?.on ?? ""} hint={dateHint} maxLength={60} />
        <TextArea
          name="text"
          label="What happened"
          value={row?.text ?? ""}
          hint="Every member reads it: who kept the car belongs under keepers."
          maxLength={4_000}
        />
        <ProvenanceFields sources={car.sources} {...(row === undefined ? {} : { known: row })} />
      </RecordForm>
      {row === undefined ? null : (
        <RemoveForm
          club={club}
          car={car}
          action={removeNote.bind(null, club.slug, car.reference, row.id)}
          title="Take it away"
          text="For a note that is not of this car."
        />
      )}
    </RecordFrame>
  );
}
