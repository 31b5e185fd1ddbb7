import { Button } from "../../components/button";
import { archivePath } from "../../lib/path";

const choices = [
  {
    value: "",
    label: "Without personal data",
    text: "Names and addresses of keepers, drivers and members are left out; it still shows which records belong to one and the same person. Free texts, photographs and documents are as they are: look before you publish them.",
  },
  {
    value: "yes",
    label: "With personal data",
    text: "Everything. For the club's own safe keeping, or a new registrar: treat it as you would the club's address book.",
  },
] as const;

/** Asks for the archive. A plain GET form: it works without a script. */
export function ArchiveForm({ club }: { readonly club: string }) {
  return (
    <form action={archivePath(club)} method="get" className="print:hidden grid justify-items-start gap-4">
      <fieldset className="grid gap-3">
        <legend className="pb-1 font-semibold text-small">People</legend>
        {choices.map(({ value, label, text }) => (
          <label key={label} className="grid cursor-pointer grid-cols-[1.25rem_1fr] items-start gap-x-3 py-1">
            <input
              type="radio"
              name="people"
              value={value}
              defaultChecked={value === ""}
              className="mt-0.5 size-5 accent-ink"
            />
            <span>
              <span className="font-semibold">{label}</span>
              <span className="block text-small text-soft">{text}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <Button weight="mark">Download the archive</Button>
    </form>
  );
}
