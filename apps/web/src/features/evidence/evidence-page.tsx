import type { CarEvidence, SupportGroup, TargetEvidence } from "@trunnion/api";
import { type EvidenceTargetKind, evidenceTargetKinds, evidenceTargetWords } from "@trunnion/register";
import { LinkButton } from "../../components/button";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { carEvidencePath, carPath, clubPath, supportPath } from "../../lib/path";
import { AddSection } from "./add-section";
import type { Outcome } from "./outcome";
import { ThumbGrid } from "./thumb";

export interface Sent {
  /** How many files were just added. */
  readonly added?: number;
  readonly outcome?: Outcome;
}

export interface EvidencePageProps extends Sent {
  readonly club: ClubFace;
  readonly evidence: CarEvidence;
  /** Narrowed to one kind of what is supported. */
  readonly of?: EvidenceTargetKind;
  /** What the next one supports, to begin with. */
  readonly chosen?: string;
}

const sayPieces = (count: number) => (count === 1 ? "1 photo or document" : `${count} photos and documents`);

function Added({ count }: { readonly count: number | undefined }) {
  if (count === undefined || count === 0) return null;
  return (
    <p role="status" className="mb-6 max-w-prose border-ink border-l-4 py-1 pl-4 font-semibold">
      {count === 1 ? "One file is on record now." : `${count} files are on record now.`}
    </p>
  );
}

function Filter({ club, evidence, of }: Pick<EvidencePageProps, "club" | "evidence" | "of">) {
  const kinds = evidenceTargetKinds.filter((kind) =>
    evidence.groups.some(({ target }) => target.kind === kind),
  );
  if (kinds.length < 2) return null;
  const { reference } = evidence.car;
  const views = [
    { kind: undefined, label: "Everything" },
    ...kinds.map((kind) => ({ kind, label: evidenceTargetWords[kind] })),
  ];
  return (
    <nav aria-label="Show what supports" className="flex flex-wrap gap-x-5 pb-4 text-small print:hidden">
      {views.map(({ kind, label }) => (
        <a
          key={label}
          href={carEvidencePath(club.slug, reference, kind === undefined ? {} : { of: kind })}
          {...(kind === of ? { "aria-current": "true" as const } : {})}
          className="place"
        >
          {label}
        </a>
      ))}
    </nav>
  );
}

function Group({ club, group }: { readonly club: string; readonly group: SupportGroup }) {
  const { target, reference, pieces } = group;
  const id = `supports-${reference.replace(":", "-")}`;
  return (
    <section aria-labelledby={id}>
      <h3 id={id} className="flex flex-wrap items-baseline gap-x-3 border-line border-b pb-1 text-lead">
        {target.label}
        {target.past ? <span className="text-small text-soft">superseded</span> : null}
      </h3>
      <div className="pt-3">
        <ThumbGrid club={club} pieces={pieces} />
      </div>
    </section>
  );
}

/** A kind of what is supported, with all of it. */
function Kind({
  club,
  kind,
  groups,
}: {
  readonly club: string;
  readonly kind: EvidenceTargetKind;
  readonly groups: readonly SupportGroup[];
}) {
  const here = groups.filter(({ target }) => target.kind === kind);
  if (here.length === 0) return null;
  return (
    <section aria-labelledby={`kind-${kind}`} className="grid gap-8">
      <SectionHead id={`kind-${kind}`} title={evidenceTargetWords[kind]} />
      {here.map((group) => (
        <Group key={group.reference} club={club} group={group} />
      ))}
    </section>
  );
}

/** A car's photos and documents, by what they support. */
export function EvidencePage({ club, evidence, of, chosen, added, outcome }: EvidencePageProps) {
  const { car, groups, pieces, choices, mayAdd } = evidence;
  return (
    <>
      <PageHead
        title="Photos and documents"
        back={{ href: carPath(club.slug, car.reference), label: car.chassis }}
        plate={<Plate chassis={car.chassis} />}
        lead={pieces === 0 ? "None yet" : sayPieces(pieces)}
      >
        {mayAdd && pieces > 0 ? <LinkButton href="#add">Add photos or documents</LinkButton> : null}
      </PageHead>
      <Added count={added} />
      <Filter club={club} evidence={evidence} {...(of === undefined ? {} : { of })} />
      {pieces === 0 ? (
        <p className="max-w-prose pb-8">
          Nothing on this car's record is supported by a photo or document yet.
        </p>
      ) : null}
      <div className="grid gap-12">
        {evidenceTargetKinds
          .filter((kind) => of === undefined || kind === of)
          .map((kind) => (
            <Kind key={kind} club={club.slug} kind={kind} groups={groups} />
          ))}
        {mayAdd ? (
          <AddSection
            club={club.slug}
            back={`${carEvidencePath(club.slug, car.reference)}#add`}
            choices={choices}
            {...(chosen === undefined ? {} : { chosen })}
            {...(outcome === undefined ? {} : { outcome })}
          />
        ) : null}
      </div>
      <TitleBlock
        club={club.name}
        kind="Evidence"
        title={car.chassis}
        facts={[{ label: "Photos and documents", value: String(pieces) }]}
      />
    </>
  );
}

export interface SupportPageProps extends Sent {
  readonly club: ClubFace;
  readonly evidence: TargetEvidence;
}

/** What supports one thing of the record. */
export function SupportPage({ club, evidence, added, outcome }: SupportPageProps) {
  const { group, car, mayAdd } = evidence;
  const { target, reference, pieces } = group;
  const back = car
    ? { href: carPath(club.slug, car.reference), label: car.chassis }
    : { href: clubPath(club.slug), label: "Today" };
  return (
    <>
      <PageHead
        title={target.label}
        back={back}
        lead={`${evidenceTargetWords[target.kind]}: what supports it`}
      />
      <Added count={added} />
      <div className="grid gap-12">
        {pieces.length === 0 ? (
          <p>No photo or document supports it yet.</p>
        ) : (
          <ThumbGrid club={club.slug} pieces={pieces} />
        )}
        {mayAdd ? (
          <AddSection
            club={club.slug}
            back={supportPath(club.slug, reference)}
            choices={[{ reference, kind: target.kind, label: target.label }]}
            {...(outcome === undefined ? {} : { outcome })}
          />
        ) : null}
      </div>
    </>
  );
}
