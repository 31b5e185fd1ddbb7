import type { RuleSetFacts } from "@trunnion/api";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { deskPath, ruleSetPath } from "../../lib/path";

const statusWords = { draft: "draft", current: "current", superseded: "superseded" } as const;

/** The club's rule sets, version by version. */
export function RuleSetsPage({
  club,
  sets,
}: {
  readonly club: ClubFace;
  readonly sets: readonly RuleSetFacts[];
}) {
  return (
    <>
      <PageHead
        title="Rule sets"
        back={{ href: deskPath(club.slug), label: "Desk" }}
        lead="What a scrutineer looks at, and where it comes from. The organiser's current regulations decide."
      />
      {sets.length === 0 ? <p>The club has no rule set.</p> : null}
      <ul className="border-hair border-t">
        {sets.map(({ id, slug, name, edition, version, status }) => (
          <li key={id} className="flex flex-wrap justify-between gap-x-6 border-hair border-b py-3">
            <a href={ruleSetPath(club.slug, slug, version)}>
              {name}, {edition}
            </a>
            <span className="text-small text-soft">
              version {version}, {statusWords[status]}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
