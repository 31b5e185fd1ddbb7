import type { FilterForm } from "@trunnion/api";
import { type DraftGroup, draftLimits, emptyDraft } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { Notice } from "../../components/notice";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { type RegisterSearch, registerPath, savedFiltersPath } from "../../lib/path";
import { DraftFields } from "./draft-fields";
import { buildFilter } from "./filter-action";

/** The condition the form begins with: none, one it can show, one it can only say, or one that cannot be read. */
export type Beginning =
  | { readonly as: "empty" }
  | { readonly as: "draft"; readonly draft: DraftGroup; readonly said: string }
  | { readonly as: "words"; readonly said: string }
  | { readonly as: "broken"; readonly problem: string };

export interface FilterPageProps {
  readonly club: ClubFace;
  readonly form: FilterForm;
  readonly begin: Beginning;
  /** What of the register's address stays beside the condition. */
  readonly kept: Omit<RegisterSearch, "where" | "filter" | "series" | "show">;
}

/** Where a condition on the register is put together. */
export function FilterPage({ club, form, begin, kept }: FilterPageProps) {
  const { own, series, system } = form;
  return (
    <>
      <PageHead
        title="Cars by what is recorded of them"
        back={{ href: registerPath(club.slug, kept), label: "Register" }}
        lead={<Standing begin={begin} />}
      />
      <EditForm
        action={buildFilter.bind(null, club.slug, kept)}
        submit="Show the cars"
        cancel={{ href: savedFiltersPath(club.slug), label: "Saved filters" }}
      >
        <DraftFields
          initial={begin.as === "draft" ? begin.draft : emptyDraft}
          own={own}
          series={series}
          system={system}
        />
      </EditForm>
      <p className="max-w-prose pt-6 text-small text-soft">
        What only the specification says of a car is not known of it. A car of which the record does not say
        whether the condition holds is in neither list: the register says how many those are, and shows them.
        Groups go {draftLimits.depth} deep, which is as deep as a condition may go, with {draftLimits.parts}{" "}
        parts in all.
      </p>
    </>
  );
}

function Standing({ begin }: { readonly begin: Beginning }) {
  switch (begin.as) {
    case "empty":
      return null;
    case "draft":
      return <p className="max-w-prose">Now: cars of which {begin.said}.</p>;
    case "words":
      return (
        <Notice
          tone="note"
          text={{
            what: `Now: cars of which ${begin.said}.`,
            remedy: `This form cannot show that condition part by part: it has more than ${draftLimits.parts} parts, or asks about what this club's dictionary does not have. It stands until you put another in its place.`,
          }}
        />
      );
    case "broken":
      return (
        <Notice
          text={{
            what: `The condition in this address cannot be read: ${begin.problem}.`,
            remedy: "Put it together again here, or follow the link again from where it was sent.",
          }}
        />
      );
  }
}
