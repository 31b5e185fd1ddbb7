import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { withdrawPart } from "./action";

/** Takes a part off the list, with the reason. */
export function WithdrawPart({ club, part }: { readonly club: string; readonly part: string }) {
  return (
    <details className="print:hidden pt-8">
      <summary className="min-h-11 cursor-pointer py-2">Take it off the list</summary>
      <EditForm
        action={withdrawPart.bind(null, club, part)}
        submit="Take it off the list"
        weight="plain"
        labels={{ reason: "Why" }}
      >
        <TextField
          name="reason"
          label="Why"
          required
          maxLength={300}
          hint="For the journal: another part of the list is the same, it never fitted."
        />
      </EditForm>
    </details>
  );
}
