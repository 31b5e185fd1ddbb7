import type { RuleSetPage as Facts } from "@trunnion/api";
import { stationLabels, stations } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { ruledCarPath, ruleFormPath, ruleSetPath, ruleSetsPath } from "../../lib/path";
import { copyRuleSet, type DraftOf, removeRow, settleRuleSet } from "./action";

export interface RuleSetPageProps {
  readonly club: ClubFace;
  readonly page: Facts;
}

/** One version of a rule set: limits, classes, checks; a draft is edited, any other copied. */
export function RuleSetPage({ club, page }: RuleSetPageProps) {
  const { facts, versions, differences, mayEdit } = page;
  const { slug, name, edition, version, status, revision } = facts;
  const draft: DraftOf | undefined =
    mayEdit && status === "draft" ? { ruleSet: slug, version, revision } : undefined;
  const hasDraft = versions.some((one) => one.status === "draft");
  return (
    <>
      <PageHead
        title={`${name}, ${edition}`}
        back={{ href: ruleSetsPath(club.slug), label: "Rule sets" }}
        lead={
          <p>
            Version {version}, {status}. The organiser's current regulations decide: compare it with them.
          </p>
        }
      >
        <a href={ruledCarPath(club.slug, facts)}>See it on a car</a>
      </PageHead>
      <p className="pb-4 text-small">
        Versions:{" "}
        {versions.map((one) => (
          <a key={one.id} href={ruleSetPath(club.slug, slug, one.version)} className="mr-4">
            {one.version} ({one.edition}, {one.status})
          </a>
        ))}
      </p>
      {facts.from === undefined ? null : <Differences from={facts.from} differences={differences} />}
      <Limits club={club.slug} page={page} draft={draft} />
      <Classes club={club.slug} page={page} draft={draft} />
      <Checks club={club.slug} page={page} draft={draft} />
      {draft ? (
        <section className="grid gap-4 pt-8">
          <SectionHead title="When the draft is done" />
          <EditForm
            action={settleRuleSet.bind(null, club.slug, draft, "makeCurrent")}
            submit="Make it the current one"
          >
            <p>Events planned from then on use it; events planned before keep theirs.</p>
          </EditForm>
          <EditForm
            action={settleRuleSet.bind(null, club.slug, draft, "discard")}
            submit="Discard the draft"
            weight="plain"
          >
            <span className="sr-only">Everything changed in the draft goes.</span>
          </EditForm>
        </section>
      ) : null}
      {mayEdit && !hasDraft ? (
        <section className="grid gap-4 pt-8">
          <SectionHead title="Next year" />
          <EditForm
            action={copyRuleSet.bind(null, club.slug, { ruleSet: slug, version })}
            submit="Copy into a draft"
          >
            <TextField
              name="edition"
              label="Edition of the copy"
              maxLength={60}
              hint="The year, as the organiser gives it."
              required
            />
          </EditForm>
        </section>
      ) : null}
    </>
  );
}

function Differences({
  from,
  differences,
}: {
  readonly from: number;
  readonly differences: Facts["differences"];
}) {
  return (
    <section aria-labelledby="differences" className="pb-6">
      <SectionHead id="differences" title={`What differs from version ${from}`} />
      {differences.length === 0 ? <p>Nothing.</p> : null}
      <ul>
        {differences.map(({ kind, what }) => (
          <li key={`${kind} ${what}`} className="border-hair border-b py-1">
            <b className="text-red">{kind}</b> {what}
          </li>
        ))}
      </ul>
    </section>
  );
}

interface PartProps {
  readonly club: string;
  readonly page: Facts;
  readonly draft: DraftOf | undefined;
}

type Row = Parameters<typeof removeRow>[2];

/** Change and take out, where the version is a draft. */
function RowTools({
  club,
  draft,
  row,
  name,
}: Omit<PartProps, "page"> & { readonly row: Row; readonly name: string }) {
  if (!draft) return null;
  const of = { slug: draft.ruleSet, version: draft.version };
  return (
    <div className="flex flex-wrap items-center gap-4 text-small">
      <a href={ruleFormPath(club, of, row.kind, row.row)} aria-label={`Change ${name}`}>
        Change
      </a>
      <EditForm action={removeRow.bind(null, club, draft, row)} submit="Take out" weight="plain">
        <span className="sr-only">{name}</span>
      </EditForm>
    </div>
  );
}

function AddLink({ club, draft, kind }: Omit<PartProps, "page"> & { readonly kind: Row["kind"] }) {
  if (!draft) return null;
  return <a href={ruleFormPath(club, { slug: draft.ruleSet, version: draft.version }, kind)}>Add a {kind}</a>;
}

function Limits({ club, page, draft }: PartProps) {
  return (
    <section aria-labelledby="limits" className="pb-6">
      <SectionHead id="limits" title="Limits">
        <AddLink club={club} draft={draft} kind="limit" />
      </SectionHead>
      {page.limits.length === 0 ? (
        <p>No limits of its own: settings are checked against the specification.</p>
      ) : null}
      <ul>
        {page.limits.map(({ id, label, said, className, source }) => (
          <li key={id} className="flex flex-wrap justify-between gap-4 border-hair border-b py-2">
            <span>
              {label}: <b>{said}</b>
              {className === "" ? " for every class" : ` for class ${className}`}
              <span className="block text-fine text-soft">{source.title}</span>
            </span>
            <RowTools club={club} draft={draft} row={{ kind: "limit", row: id }} name={label} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Classes({ club, page, draft }: PartProps) {
  return (
    <section aria-labelledby="classes" className="pb-6">
      <SectionHead id="classes" title="Classes">
        <AddLink club={club} draft={draft} kind="class" />
      </SectionHead>
      <ul>
        {page.classes.map(({ id, code, name, said, condition }) => (
          <li key={id} className="flex flex-wrap justify-between gap-4 border-hair border-b py-2">
            <span className="max-w-prose">
              <b>
                {code} {name}
              </b>
              : {condition.op === "always" ? "every car" : `cars of which ${said}`}
            </span>
            <RowTools club={club} draft={draft} row={{ kind: "class", row: code }} name={`class ${code}`} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Checks({ club, page, draft }: PartProps) {
  return (
    <section aria-labelledby="checks">
      <SectionHead id="checks" title={`Checks (${page.checks.length})`}>
        <AddLink club={club} draft={draft} kind="check" />
      </SectionHead>
      {stations.map((station) => {
        const here = page.checks.filter((check) => check.station === station);
        return here.length === 0 ? null : (
          <details key={station} className="border-hair border-b py-2">
            <summary className="min-h-11 cursor-pointer font-semibold">
              {stationLabels[station]} ({here.length})
            </summary>
            <ul>
              {here.map(({ id, text, said, when, source }) => (
                <li key={id} className="flex flex-wrap justify-between gap-4 border-hair border-b py-2">
                  <span className="max-w-prose">
                    {text}
                    <span className="block text-fine text-soft">
                      {when.op === "always" ? "every car" : `cars of which ${said}`} ·{" "}
                      {[source.title, source.edition, source.clause]
                        .filter((part) => part !== undefined)
                        .join(", ")}
                    </span>
                  </span>
                  <RowTools club={club} draft={draft} row={{ kind: "check", row: id }} name={text} />
                </li>
              ))}
            </ul>
          </details>
        );
      })}
    </section>
  );
}
