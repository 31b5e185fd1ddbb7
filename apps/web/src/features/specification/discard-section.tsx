import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { discardDraft } from "./action";

export interface DiscardSectionProps {
  readonly club: string;
  readonly series: string;
  readonly version: number;
  readonly revision: number;
}

/** Gives a draft up; folded away, since it cannot be undone. */
export function DiscardSection({ club, series, version, revision }: DiscardSectionProps) {
  return (
    <details className="print:hidden max-w-3xl border-hair border-t pt-3">
      <summary>Discard this draft</summary>
      <div className="pt-4">
        <EditForm action={discardDraft.bind(null, club, { series, version })} submit="Discard the draft">
          <input type="hidden" name="revision" value={revision} />
          <TextField
            name="reason"
            label="Why"
            hint="Everything in the draft is lost; the journal keeps that it was there, and this."
            maxLength={500}
          />
        </EditForm>
      </div>
    </details>
  );
}
