import type { ModificationDraft, SubmissionMix } from "@trunnion/register";
import { submissionLimits } from "@trunnion/register";
import { Button } from "../../components/button";
import { SectionHead } from "../../components/page-head";
import { ChangeCircumstances, type ChangeFieldsProps, ChangeLines } from "./change-fields";
import { MixList } from "./mix-list";

export interface ChangeSectionProps extends ChangeFieldsProps {
  /** How many changes the submission has. */
  readonly count: number;
  /** Threads and lengths of the submission that are taken for others. */
  readonly mixes: readonly SubmissionMix[];
}

/** One change of a submission: its parts, then when, why and with what. Numbered where there are several. */
export function ChangeSection({ count, mixes, ...props }: ChangeSectionProps) {
  const { of, modification, content } = props;
  const number = count > 1 ? `Change ${of + 1}: ` : "";
  return (
    <div className="grid content-start gap-8">
      <section aria-labelledby={`parts-${of}`} className="grid min-w-0 content-start gap-4">
        <SectionHead
          id={`parts-${of}`}
          title={count > 1 ? `${number}what was changed` : "What was changed"}
        />
        <ChangeLines {...props} />
      </section>
      <section aria-labelledby={`around-${of}`} className="grid min-w-0 content-start gap-4">
        <SectionHead
          id={`around-${of}`}
          title={count > 1 ? `${number}when, why and with what` : "When, why and with what"}
        />
        <ChangeCircumstances {...{ of, modification, content }} />
        <div role="status" className="empty:hidden">
          <MixList mixes={mixes.filter((mix) => mix.of === of)} />
        </div>
        {count === 1 ? null : (
          <div>
            <Button name="do" value={`removeChange:${of}`}>
              Take out change {of + 1}
            </Button>
          </div>
        )}
      </section>
    </div>
  );
}

/** Where ticked parts go: to a change there is, fitted at one time for one reason, or to one of their own. */
export function AddButtons({ modifications }: { readonly modifications: readonly ModificationDraft[] }) {
  const { length } = modifications;
  const begun = length > 1 || (modifications[0]?.changes.length ?? 0) > 0;
  return (
    <div className="grid gap-2">
      <div className="flex flex-wrap gap-3">
        {modifications.map((_, of) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: changes are told apart by their place only
          <Button key={of} name="do" value={`add:${of}`}>
            {length === 1 ? "Add the ticked parts" : `Add the ticked parts to change ${of + 1}`}
          </Button>
        ))}
        {begun && length < submissionLimits.modifications ? (
          <Button name="do" value={`add:${length}`}>
            Add them as another change
          </Button>
        ) : null}
      </div>
      {begun ? (
        <p className="max-w-prose text-fine text-soft">
          What was fitted at one time for one reason is one change. Another day, donor or reason: another
          change.
        </p>
      ) : null}
    </div>
  );
}
