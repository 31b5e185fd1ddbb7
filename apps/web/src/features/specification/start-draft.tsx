import type { SpecificationPage } from "@trunnion/api";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField } from "../../components/form/form-field";
import { SectionHead } from "../../components/page-head";
import { startDraft } from "./action";

export interface StartDraftProps {
  readonly club: string;
  readonly page: SpecificationPage;
}

/** Begins the next version: a copy of one there is, of another series', or empty. */
export function StartDraft({ club, page: { series, versions, copyable } }: StartDraftProps) {
  const own = versions
    .filter(({ status }) => status !== "draft")
    .map(({ version, status }) => ({
      value: `${series.slug}@${version}`,
      label: `a copy of version ${version}, ${status}`,
    }));
  const others = copyable.map(({ slug, name }) => ({
    value: slug,
    label: `a copy of ${name}, its current version`,
  }));
  return (
    <section aria-labelledby="begin" className="print:hidden">
      <SectionHead id="begin" title="Begin a new version" />
      <EditForm action={startDraft.bind(null, club, series.slug)} submit="Begin a new version">
        <ChoiceField
          name="from"
          label="It begins as"
          options={[...own, ...others, { value: "empty", label: "an empty one" }]}
          hint="Nothing changes for any car before the draft is made current."
        />
      </EditForm>
    </section>
  );
}
