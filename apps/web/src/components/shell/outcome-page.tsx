import type { RefusalText } from "@trunnion/register";
import { LinkButton } from "../button";
import { PageHead } from "../page-head";

export interface OutcomePageProps {
  readonly title: string;
  readonly text: RefusalText;
  /** Where to go on. */
  readonly on?: { readonly href: string; readonly label: string };
}

/** A whole page that says no: what was wrong, what to do, where to go on. */
export function OutcomePage({ title, text, on }: OutcomePageProps) {
  return (
    <>
      <PageHead title={title} />
      <div className="grid max-w-prose justify-items-start gap-5">
        <div>
          <p className="text-lead">{text.what}</p>
          <p>{text.remedy}</p>
        </div>
        {on === undefined ? null : <LinkButton href={on.href}>{on.label}</LinkButton>}
      </div>
    </>
  );
}
