import type { ClaimPage as Claim, Claimant, DecisionLine, Statement } from "@trunnion/api";
import { carStatusWords, findCharacteristic, sayDay, sayNumberKind } from "@trunnion/register";
import type { ReactNode } from "react";
import { LinkButton } from "../../components/button";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate, SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { carEvidencePath, carPath, editCarPath, mergePath, numbersPath } from "../../lib/path";
import { kindWords, standingWords, trustWords } from "../car/edit/words";
import { decide } from "./action";
import { outcomeWords, sayDecision } from "./words";

interface ClaimPageProps {
  readonly club: ClubFace;
  readonly claim: Claim;
}

interface Row {
  readonly label: string;
  readonly of: (claimant: Claimant) => ReactNode;
}

const weights = { for: "Speaks for it", against: "Speaks against it", neither: "Neither" } as const;

function Known({ source, locus, trust }: Statement) {
  const where = [source, locus].filter((part) => part !== "").join(", ");
  const how = trustWords[trust]?.toLowerCase() ?? trust;
  return <span className="block text-fine text-soft">{where === "" ? how : `${where} (${how})`}</span>;
}

function Statements({
  list,
  label,
}: {
  readonly list: readonly Statement[];
  readonly label: (key: string) => string;
}) {
  if (list.length === 0) return <span className="text-soft">none recorded</span>;
  return (
    <ul className="grid gap-1">
      {list.map((one) => (
        <li key={`${one.label} ${one.value}`}>
          {one.label === "" ? "" : `${label(one.label)}: `}
          {one.value}
          <Known {...one} />
        </li>
      ))}
    </ul>
  );
}

const orNone = (text: string) => (text === "" ? <span className="text-soft">not recorded</span> : text);

function characteristicLabel(key: string): string {
  const [name = key, side] = key.split(" ");
  const label = findCharacteristic(name)?.label ?? name;
  return side === undefined ? label : `${label}, ${side}`;
}

function Keepers({ keepers }: Pick<Claimant, "keepers">) {
  if (keepers.length === 0) return <span className="text-soft">none recorded</span>;
  return (
    <ul>
      {keepers.map(({ name, from, to }, index) => (
        // Spans have nothing of their own to tell them apart by.
        // biome-ignore lint/suspicious/noArrayIndexKey: the list is never reordered
        <li key={index}>
          {name ?? "a keeper"}, {from === "" ? "since when is not known," : from} to{" "}
          {to === "" ? "now" : sayDay(to)}
        </li>
      ))}
    </ul>
  );
}

function rowsFor(club: string): readonly Row[] {
  return [
    {
      label: "What the register says",
      of: ({ arguments: told }) =>
        told.length === 0 ? (
          <span className="text-soft">nothing by itself</span>
        ) : (
          <ul className="grid gap-1">
            {told.map(({ weight, text }) => (
              <li key={text}>
                <span className="text-fine text-soft">{weights[weight]}: </span>
                {text}
              </li>
            ))}
          </ul>
        ),
    },
    { label: "How it stands", of: ({ standing }) => standingWords[standing] },
    { label: "Series", of: ({ series }) => series },
    { label: "Built", of: ({ built }) => orNone(built) },
    { label: "First registered", of: ({ firstRegistered }) => orNone(firstRegistered) },
    { label: "Status", of: ({ status }) => carStatusWords[status] },
    {
      label: "Numbers and marks",
      of: ({ numbers }) => <Statements list={numbers} label={(kind) => kindWords[kind] ?? kind} />,
    },
    { label: "Keepers", of: ({ keepers }) => <Keepers keepers={keepers} /> },
    {
      label: "As built",
      of: ({ asBuilt }) => <Statements list={asBuilt} label={characteristicLabel} />,
    },
    { label: "Notes", of: ({ notes }) => <Statements list={notes} label={(on) => on} /> },
    { label: "Remarks", of: ({ remarks }) => orNone(remarks) },
    {
      label: "Evidence",
      of: ({ evidence, reference }) => (
        <a href={carEvidencePath(club, reference)}>
          {evidence.length === 0
            ? "none of the car as a whole"
            : evidence.map(({ caption }) => caption).join(", ")}
        </a>
      ),
    },
  ];
}

function SideBySide({ club, claimants }: { readonly club: string; readonly claimants: readonly Claimant[] }) {
  return (
    <section className="overflow-x-auto" aria-label="The cars side by side">
      <table className="claim-table">
        <caption className="sr-only">The cars that claim the number, side by side</caption>
        <thead>
          <tr>
            <td />
            {claimants.map(({ reference, chassis }) => (
              <th key={reference} scope="col">
                <SmallPlate chassis={chassis} href={carPath(club, reference)} />
                <span className="block text-small">{reference}</span>
                <a href={editCarPath(club, reference)} className="print:hidden font-normal text-small">
                  Edit its record
                </a>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rowsFor(club).map(({ label, of }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {claimants.map((claimant) => (
                <td key={claimant.reference}>{of(claimant)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function DecisionForm({
  club,
  claim,
  standing,
}: ClaimPageProps & { readonly standing: DecisionLine | undefined }) {
  const outcomes = Object.entries(outcomeWords).map(([value, label]) => ({ value, label }));
  const holders = [
    { value: "", label: "No single one" },
    ...claim.claimants.map(({ reference }) => ({ value: reference, label: reference })),
  ];
  const { kind, number } = claim;
  const about = { club: club.slug, kind, number, standing: standing?.id ?? "" };
  return (
    <EditForm
      action={decide.bind(null, about)}
      submit={standing === undefined ? "Decide" : "Decide anew"}
      cancel={{ href: numbersPath(club.slug), label: "Back, without deciding" }}
      labels={{ outcome: "Decision", holder: "Holder", reason: "Reasons" }}
    >
      <div className="grid gap-4 sm:grid-cols-2">
        <ChoiceField
          name="outcome"
          label="Decision"
          value={standing?.outcome ?? "undecided"}
          options={outcomes}
        />
        <ChoiceField
          name="holder"
          label="Holder"
          value={standing?.holder ?? ""}
          options={holders}
          hint="Where one car holds the number. It then stands accepted there, disputed on the others."
        />
      </div>
      <TextArea
        name="reason"
        label="Reasons"
        hint="So that who comes after you can weigh them. Every member reads them: name no persons."
        maxLength={4_000}
        rows={6}
      />
    </EditForm>
  );
}

function Decisions({ decisions }: { readonly decisions: readonly DecisionLine[] }) {
  if (decisions.length === 0) return <p className="text-soft">Nothing was decided yet.</p>;
  return (
    <ol>
      {decisions.map((decision) => (
        <li key={decision.id} className="border-hair border-b py-2">
          <p className={decision.supersededOn === undefined ? "font-semibold" : "text-soft"}>
            {sayDecision(decision)}
            {decision.supersededOn === undefined ? "" : `; superseded ${sayDay(decision.supersededOn)}`}
          </p>
          <p className="max-w-prose whitespace-pre-line">{decision.reason}</p>
        </li>
      ))}
    </ol>
  );
}

function MergeOffer({ club, claim }: ClaimPageProps) {
  const [first, ...others] = claim.claimants;
  if (first === undefined || others.length === 0) return null;
  return (
    <section aria-labelledby="merge" className="grid gap-3">
      <SectionHead id="merge" title="One car, one record" />
      <p className="max-w-prose">
        The decision says that the records are of one car. Making them one moves everything to the record that
        stays; look at what would move first.
      </p>
      <p className="flex flex-wrap gap-4">
        {others.map(({ reference }) => (
          <LinkButton key={reference} href={mergePath(club.slug, first.reference, reference)}>
            {`See what merging ${reference} into ${first.reference} does`}
          </LinkButton>
        ))}
      </p>
    </section>
  );
}

/** The cars that claim one number, weighed against each other, and what is decided. */
export function ClaimPage({ club, claim }: ClaimPageProps) {
  const standing = claim.decisions.find(({ supersededOn }) => supersededOn === undefined);
  const kind = sayNumberKind(claim.kind);
  return (
    <>
      <PageHead
        title={`Who holds this ${kind}?`}
        back={{ href: numbersPath(club.slug), label: "Numbers" }}
        plate={<Plate chassis={claim.number} maker={kind} />}
        lead={`${claim.claimants.length} cars claim it`}
      />
      <div className="grid gap-12">
        <SideBySide club={club.slug} claimants={claim.claimants} />
        <section aria-labelledby="decisions">
          <SectionHead id="decisions" title="Decided so far" />
          <Decisions decisions={claim.decisions} />
        </section>
        {standing?.outcome === "sameCar" ? <MergeOffer club={club} claim={claim} /> : null}
        {claim.claimants.length < 2 ? null : (
          <section aria-labelledby="decide" className="print:hidden">
            <SectionHead id="decide" title={standing === undefined ? "Your decision" : "Reconsider it"} />
            <DecisionForm club={club} claim={claim} standing={standing} />
          </section>
        )}
      </div>
      <TitleBlock
        club={club.name}
        kind="Decision"
        title={claim.number}
        facts={[{ label: "Cars", value: String(claim.claimants.length) }]}
      />
    </>
  );
}
