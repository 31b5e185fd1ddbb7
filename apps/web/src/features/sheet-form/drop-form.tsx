import { Button } from "../../components/button";
import { SectionHead } from "../../components/page-head";
import { sheetFormsPath } from "../../lib/path";

/** Takes a sheet that was filled in on a screen. A plain form: a file can be dropped on its field, or chosen. */
export function DropForm({ club, event }: { readonly club: string; readonly event: string }) {
  return (
    <section aria-labelledby="sheet-form" className="print:hidden pt-8">
      <SectionHead id="sheet-form" title="Bring back filled-in sheets" />
      <form
        action={sheetFormsPath(club, event)}
        method="post"
        encType="multipart/form-data"
        className="flex flex-wrap items-end gap-x-6 gap-y-3"
      >
        <label className="grid gap-1">
          <span className="font-semibold text-small">Sheet filled in on a tablet or desktop, PDF</span>
          <input
            type="file"
            name="file"
            accept="application/pdf,.pdf"
            required
            className="min-h-12 max-w-full border border-line border-dashed p-3"
          />
        </label>
        <Button>Look at it</Button>
      </form>
      <p className="max-w-prose pt-2 text-small text-soft">
        You see what it says beside what was found so far. Nothing is taken before you say so.
      </p>
    </section>
  );
}
