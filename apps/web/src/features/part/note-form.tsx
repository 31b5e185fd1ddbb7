import { partNoteKinds, partNoteWords } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea, TextField } from "../../components/form/form-field";
import { notePart } from "./action";

export interface NoteFormProps {
  readonly club: string;
  readonly part: string;
  /** ISO day. */
  readonly today: string;
  /** Key of the note it makes, so that sending it twice is one note. */
  readonly noteKey: string;
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** What a member saw of a part on a day. */
export function NoteForm({ club, part, today, noteKey }: NoteFormProps) {
  return (
    <EditForm
      action={notePart.bind(null, club, part)}
      submit="Note it"
      weight="plain"
      labels={{
        kind: "What was so",
        on: "Day",
        count: "How many",
        text: "Where, and what it was",
        car: "Tried on",
      }}
    >
      <input type="hidden" name="clientKey" value={noteKey} />
      <div className="grid gap-4 sm:grid-cols-3">
        <ChoiceField
          name="kind"
          label="What was so"
          value="found"
          options={partNoteKinds.map((kind) => ({ value: kind, label: capital(partNoteWords[kind]) }))}
        />
        <TextField name="on" label="Day" type="date" value={today} required />
        <TextField
          name="count"
          label="How many"
          inputMode="numeric"
          maxLength={4}
          hint="Where it was found."
        />
      </div>
      <TextArea
        name="text"
        label="Where, and what it was"
        rows={3}
        maxLength={1_000}
        hint="What the next one needs: where, new or used, how it measured. Every member reads it."
      />
      <TextField
        name="car"
        label="Tried on"
        maxLength={60}
        autoComplete="off"
        hint="Chassis number of the car it was held against; empty for none."
      />
    </EditForm>
  );
}
