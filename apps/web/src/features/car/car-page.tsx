import type { ReactNode } from "react";
import { Caution } from "../../components/caution";
import { PageHead, SectionHead } from "../../components/page-head";
import { type Leader, Plan, PlanLegend } from "../../components/plan";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import type { Baseline, ValueRow } from "../../components/value-table";
import { dossierPath, editCarPath, registerPath, startChangePath } from "../../lib/path";
import { EvidenceLink } from "../evidence/evidence-link";
import { Standing, type StandingProps } from "../number/standing";
import { LifeLinks } from "../timeline/life-links";
import { AssemblySections, type AssemblyState } from "./assembly-section";
import { Deviations } from "./deviation-section";
import { type HistoryLine, HistorySection } from "./history-section";
import { type CarFace, Identity } from "./identity";
import { type SettingGroup, SettingSection } from "./setting-section";

export interface CarPageProps {
  /** Whether the reader may hand in changes to it. */
  readonly maySubmit?: boolean;
  readonly club: ClubFace;
  readonly car: CarFace;
  /** The day the state is of, as written: "25 November 2026". */
  readonly on: string;
  readonly baseline: Baseline;
  /** Assemblies in walking order. */
  readonly leaders: readonly Leader[];
  /** What differs from the baseline, worst first, each with its leader. */
  readonly deviations: readonly ValueRow[];
  /** How many characteristics are not recorded: unknown is never a pass. */
  readonly notRecorded: number;
  /** Empty where no setting was ever measured or specified. */
  readonly settings: readonly SettingGroup[];
  /** Words for the two sides, in the club's way. */
  readonly sideWords: { readonly left: string; readonly right: string };
  readonly assemblies: readonly AssemblyState[];
  /** Latest first. */
  readonly history: readonly HistoryLine[];
  readonly cautions: readonly string[];
  /** What the differences do, worked out. */
  readonly consequences?: ReactNode;
  /** Threads and lengths on its record that must not be mixed. */
  readonly mixes?: ReactNode;
  /** What events have to do with it: open points, entries, classes. */
  readonly events?: ReactNode;
  /** How many photos and documents support its record. */
  readonly evidence?: number;
  /** What is decided about its numbers, and where its record is. */
  readonly standing?: Omit<StandingProps, "club" | "chassis" | "claims">;
}

function CarPlate({ car }: { readonly car: CarFace }) {
  const note = car.claims > 1 ? `claim ${car.claim} of ${car.claims} to this number` : undefined;
  return <Plate chassis={car.chassis} maker={car.marque} {...(note === undefined ? {} : { note })} />;
}

interface EditLinkProps extends Pick<CarPageProps, "club" | "car" | "standing"> {
  readonly section?: string;
  readonly label: string;
}

/** To the forms over one section of the record, for those who may. */
function EditLink({ club, car, standing, section, label }: EditLinkProps) {
  if (standing?.mayEdit !== true) return null;
  return (
    <a
      href={editCarPath(club.slug, car.reference, section)}
      className="print:hidden inline-flex min-h-11 items-center text-small"
    >
      {label}
    </a>
  );
}

/** Everything of the car as a file to keep; with its keepers for those who keep the register. */
function DossierLinks({ club, car, standing }: Pick<CarPageProps, "club" | "car" | "standing">) {
  const link = "print:hidden inline-flex min-h-11 items-center text-small";
  return (
    <div className="flex flex-wrap gap-x-5">
      <a href={dossierPath(club.slug, car.reference)} className={link}>
        Dossier (PDF)
      </a>
      {standing?.mayEdit === true ? (
        <a href={dossierPath(club.slug, car.reference, { keepers: "yes" })} className={link}>
          with its keepers
        </a>
      ) : null}
    </div>
  );
}

/** Everything known of one car: who it is, what differs, how it is set, what it is made of, what became of it. */
export function CarPage(props: CarPageProps) {
  const { club, car, leaders } = props;
  return (
    <>
      <PageHead
        title={`${car.marque} ${car.series}`}
        back={{ href: registerPath(club.slug), label: "Register" }}
        plate={<CarPlate car={car} />}
      />
      {props.standing === undefined ? null : (
        <Standing club={club.slug} chassis={car.chassis} claims={car.claims} {...props.standing} />
      )}
      <div className="grid gap-x-12 gap-y-6 wide:grid-cols-[1fr_minmax(0,22rem)] print:gap-x-8 print:grid-cols-[1fr_19rem]">
        <figure className="grid content-start gap-y-4">
          <Plan leaders={leaders} />
          <figcaption className="text-small">
            <PlanLegend leaders={leaders} />
          </figcaption>
        </figure>
        <div className="grid content-start">
          <EditLink {...props} label="Edit the record" />
          {props.maySubmit === true ? (
            <a
              href={startChangePath(club.slug, car.reference)}
              className="print:hidden inline-flex min-h-11 items-center text-small"
            >
              Record a change
            </a>
          ) : null}
          <EvidenceLink club={club.slug} car={car.reference} count={props.evidence ?? 0} />
          <LifeLinks club={club.slug} car={car.reference} />
          <DossierLinks {...props} />
          <Identity car={car} />
        </div>
      </div>
      <div className="grid grid-cols-1 gap-12 pt-10">
        <Deviations {...props} />
        {props.consequences}
        {props.mixes}
        <Caution cautions={props.cautions} />
        {props.events}
        <SettingSection groups={props.settings} sideWords={props.sideWords} />
        <section aria-labelledby="state" className="grid gap-8">
          <SectionHead id="state" title="State, assembly by assembly">
            <span className="text-small text-soft">on {props.on}</span>
            <EditLink {...props} section="as-built" label="Edit as-built values" />
          </SectionHead>
          <AssemblySections assemblies={props.assemblies} baseline={props.baseline} />
        </section>
        <HistorySection lines={props.history}>
          <EditLink {...props} section="note" label="Edit the notes" />
        </HistorySection>
      </div>
      <TitleBlock
        club={club.name}
        kind="Car"
        title={car.chassis}
        facts={[
          { label: "State on", value: props.on },
          { label: "Record version", value: String(car.version) },
        ]}
        notes={[
          "Left and right are as seen from the driver's seat.",
          "Brackets are drawn with the measurement's expanded uncertainty, k = 2, where it is known.",
        ]}
      />
    </>
  );
}
