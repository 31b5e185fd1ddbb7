import type { DecisionLine, FindingLine, NumbersPage as Found, SetAsideLine } from "@trunnion/api";
import type { NumberFinding } from "@trunnion/register";
import type { ReactNode } from "react";
import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { carPath, claimPath, correctCarPath, editPartPath, numbersPath } from "../../lib/path";
import { setAside, takeUp } from "./action";
import { sayDecision } from "./words";

const titles: Readonly<Record<NumberFinding["kind"], string>> = {
  doesNotFit: "Numbers that do not fit their series",
  claimed: "Numbers that several cars bear",
  lookAlike: "Numbers that look alike",
  outsideSeries: "Built outside the time of their series",
  outOfOrder: "Built out of order with their number",
};

interface NumbersPageProps {
  readonly club: ClubFace;
  readonly page: Found;
  /** Key of the finding whose form to set it aside is open. */
  readonly asked?: string;
}

function carsOf(finding: NumberFinding): readonly { readonly reference: string; readonly chassis: string }[] {
  return "cars" in finding ? finding.cars : [finding.car];
}

/** Where a finding is settled. */
function settleLink(club: string, finding: NumberFinding): { readonly href: string; readonly label: string } {
  switch (finding.kind) {
    case "claimed":
      return { href: claimPath(club, finding.numberKind, finding.number), label: "Weigh the claims" };
    case "doesNotFit":
      return { href: editPartPath(club, finding.car.reference, "filed"), label: "Correct the number" };
    case "lookAlike":
      return { href: carPath(club, finding.cars[0].reference), label: "Look at the first" };
    default:
      return { href: correctCarPath(club, finding.car.reference), label: "Correct the date" };
  }
}

function Proposals({ club, finding }: { readonly club: string; readonly finding: NumberFinding }) {
  if (finding.kind !== "doesNotFit") return null;
  if (finding.proposals.length === 0) return <p className="text-small">Nothing near it fits either.</p>;
  return (
    <p className="text-small">
      Could be meant:{" "}
      {finding.proposals.map(({ number, because, heldBy }, index) => (
        <span key={number}>
          {index === 0 ? "" : "; "}
          {number} ({because}
          {heldBy.length === 0 ? ", borne by no car" : ", borne by "}
          {heldBy.map((reference, place) => (
            <span key={reference}>
              {place === 0 ? "" : ", "}
              <a href={carPath(club, reference)}>{reference}</a>
            </span>
          ))}
          )
        </span>
      ))}
      .
    </p>
  );
}

function Finding({
  club,
  line,
  decision,
  children,
}: {
  readonly club: string;
  readonly line: FindingLine;
  readonly decision?: DecisionLine;
  readonly children?: ReactNode;
}) {
  const { finding, what, sure } = line;
  const settle = settleLink(club, finding);
  return (
    <li className="grid gap-1 border-hair border-b py-3" id={anchorOf(finding.key)}>
      <p className="flex flex-wrap items-center gap-2">
        {carsOf(finding).map(({ reference, chassis }) => (
          <span key={reference} className="inline-flex items-center gap-1">
            <SmallPlate chassis={chassis} href={carPath(club, reference)} />
            {reference.includes("~") ? (
              <span className="text-fine">claim {reference.split("~")[1]}</span>
            ) : null}
          </span>
        ))}
      </p>
      <p className="font-semibold">{what}</p>
      <p className="text-fine text-soft">How sure: {sure}.</p>
      <Proposals club={club} finding={finding} />
      {decision === undefined ? null : (
        <p className="text-small">
          {sayDecision(decision)}. {decision.reason}
        </p>
      )}
      <p className="print:hidden flex flex-wrap gap-x-6 text-small">
        <a href={settle.href} className="inline-flex min-h-11 items-center">
          {settle.label}
        </a>
        {children}
      </p>
    </li>
  );
}

const anchorOf = (key: string) => `finding-${key.replace(/[^A-Za-z0-9]+/g, "-")}`;

function AsideForm({ club, line }: { readonly club: string; readonly line: FindingLine }) {
  return (
    <li className="border-hair border-b pb-4">
      <EditForm
        action={setAside.bind(null, club, line.finding.key)}
        submit="Set it aside"
        cancel={{ href: numbersPath(club), label: "Leave it open" }}
        labels={{ reason: "Why" }}
      >
        <TextField
          name="reason"
          label="Why it is left as it is"
          hint="It is shown again when what it rests on changes."
          maxLength={500}
        />
      </EditForm>
    </li>
  );
}

function OpenFindings({ club, page, asked }: NumbersPageProps) {
  const kinds = Object.keys(titles) as readonly NumberFinding["kind"][];
  return kinds.map((kind) => {
    const lines = page.open.filter(({ finding }) => finding.kind === kind);
    return (
      <section key={kind} aria-labelledby={kind}>
        <SectionHead id={kind} title={titles[kind]}>
          <span className="text-small text-soft">{lines.length === 0 ? "none" : lines.length}</span>
        </SectionHead>
        <ul>
          {lines.flatMap((line) => [
            <Finding
              key={line.finding.key}
              club={club.slug}
              line={line}
              {...(line.decision === undefined ? {} : { decision: line.decision })}
            >
              <a
                href={`${numbersPath(club.slug)}?aside=${encodeURIComponent(line.finding.key)}#${anchorOf(line.finding.key)}`}
                className="inline-flex min-h-11 items-center"
              >
                Set it aside
              </a>
            </Finding>,
            ...(asked === line.finding.key
              ? [<AsideForm key={`${line.finding.key} aside`} club={club.slug} line={line} />]
              : []),
          ])}
        </ul>
      </section>
    );
  });
}

function Aside({ club, line }: { readonly club: string; readonly line: SetAsideLine }) {
  return (
    <li className="grid gap-2 border-hair border-b py-3">
      <p className="font-semibold">{line.what}</p>
      <p className="text-small">
        {line.reason} <span className="text-soft">({line.by})</span>
      </p>
      <EditForm action={takeUp.bind(null, club, line.id)} submit="Take it up again" weight="plain">
        <span hidden />
      </EditForm>
    </li>
  );
}

const RUNS = 12;

function Coverage({ page }: { readonly page: Found }) {
  return (
    <section aria-labelledby="coverage">
      <SectionHead id="coverage" title="What is known of each series" />
      <ul>
        {page.coverage.map(({ slug, name, known, built, unplaced, gaps }) => {
          const longest = gaps.toSorted((a, b) => b.count - a.count);
          const told = gaps.filter((gap) => longest.slice(0, RUNS).includes(gap));
          return (
            <li key={slug} className="border-hair border-b py-3">
              <p>
                <span className="font-semibold">{name}</span>: {known} known of {built} built
                {unplaced === 0 ? "" : `, ${unplaced} with a number that does not fit`}.
              </p>
              {gaps.length === 0 ? null : (
                <p className="text-small text-soft">
                  {gaps.length === 1 ? "1 run" : `${gaps.length} runs`} that nobody knows
                  {gaps.length > RUNS ? `; the ${RUNS} longest` : ""}:{" "}
                  {told
                    .map(({ from, to, count }) => (count === 1 ? from : `${from} to ${to} (${count})`))
                    .join(", ")}
                  .
                </p>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** What is odd about the register's numbers, each with the way to settle it. */
export function NumbersPage({ club, page, asked }: NumbersPageProps) {
  const lead = page.open.length === 0 ? "Nothing is open." : `${page.open.length} open`;
  return (
    <>
      <PageHead title="Numbers" lead={`${page.cars.toLocaleString("en-GB")} cars looked through. ${lead}`} />
      <div className="grid max-w-4xl gap-10">
        <OpenFindings club={club} page={page} {...(asked === undefined ? {} : { asked })} />
        {page.settled.length === 0 ? null : (
          <section aria-labelledby="settled">
            <SectionHead id="settled" title="Settled" />
            <ul>
              {page.settled.map((line) => (
                <Finding key={line.finding.key} club={club.slug} line={line} decision={line.decision} />
              ))}
            </ul>
          </section>
        )}
        {page.setAside.length === 0 ? null : (
          <section aria-labelledby="aside">
            <SectionHead id="aside" title="Set aside" />
            <ul>
              {page.setAside.map((line) => (
                <Aside key={line.id} club={club.slug} line={line} />
              ))}
            </ul>
          </section>
        )}
        <Coverage page={page} />
      </div>
      <TitleBlock
        club={club.name}
        kind="List"
        title="Numbers"
        facts={[
          { label: "Cars", value: page.cars.toLocaleString("en-GB") },
          { label: "Open", value: String(page.open.length) },
        ]}
        notes={[
          "Each finding is a question, not a verdict.",
          "Build dates are compared with two months to spare: works do not finish cars strictly in order.",
        ]}
      />
    </>
  );
}
