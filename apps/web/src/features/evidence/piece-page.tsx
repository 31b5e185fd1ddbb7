import type { EvidencePiece } from "@trunnion/api";
import { evidenceLimits, evidenceTargetWords } from "@trunnion/register";
import { LinkButton } from "../../components/button";
import { DefinitionTable } from "../../components/definition-table";
import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { sayLongDay } from "../../lib/day";
import {
  carEvidencePath,
  carPath,
  clubPath,
  evidenceFilePath,
  smallPicturePath,
  supportPath,
} from "../../lib/path";
import {
  correctPiece,
  linkPiece,
  type PieceAddress,
  restorePiece,
  turnPiece,
  unlinkPiece,
  withdrawPiece,
} from "./action";
import { TargetOptions } from "./add-section";
import { saySize } from "./size";
import { StepForm } from "./step-form";
import { nameOfMedia, sayPiece, Thumb } from "./thumb";

export interface PiecePageProps {
  readonly club: ClubFace;
  readonly piece: EvidencePiece;
}

interface PartProps {
  readonly at: PieceAddress;
  readonly piece: EvidencePiece;
}

function Picture({ at, piece }: PartProps) {
  const file = evidenceFilePath(at.club, at.evidence);
  if (!piece.picture) {
    return (
      <div className="evidence-card max-w-60">
        <Thumb club={at.club} piece={piece} />
        <LinkButton href={file}>Save the {nameOfMedia(piece.mediaType)}</LinkButton>
        <p className="text-fine text-soft">
          A document may hold scripts: open it with a program that runs none.
        </p>
      </div>
    );
  }
  return (
    <a href={file}>
      {/* biome-ignore lint/performance/noImgElement: made small by the service, for its members alone */}
      <img src={smallPicturePath(at.club, piece, 1280)} alt={sayPiece(piece)} className="evidence-large" />
    </a>
  );
}

function Turns({ at, piece }: PartProps) {
  if (!piece.picture || !piece.mayChange) return null;
  const turns = [
    { by: 3, label: "Turn left" },
    { by: 1, label: "Turn right" },
  ];
  return (
    <div className="flex flex-wrap gap-3 print:hidden">
      {turns.map(({ by, label }) => (
        <StepForm
          key={label}
          action={turnPiece.bind(null, at)}
          fields={{ quarterTurns: String((piece.quarterTurns + by) % 4) }}
        >
          {label}
        </StepForm>
      ))}
    </div>
  );
}

function Facts({ piece }: { readonly piece: EvidencePiece }) {
  const pixels = piece.width === undefined ? "" : `, ${piece.width} × ${piece.height} pixels`;
  return (
    <DefinitionTable
      rows={[
        { label: "Taken", value: piece.taken },
        { label: "File", value: <span className="break-all">{piece.fileName}</span> },
        {
          label: "Kind and size",
          value: `${nameOfMedia(piece.mediaType)}, ${saySize(piece.bytes)}${pixels}`,
        },
        {
          label: "Place",
          value: piece.keepsLocation
            ? "left in the file, as asked"
            : piece.picture
              ? "taken out of the file"
              : "a document is kept as it came",
        },
        { label: "Added", value: sayLongDay(piece.addedOn) },
        { label: "SHA-256", value: <code className="break-all text-fine">{piece.sha256}</code> },
      ]}
    />
  );
}

function SupportLine({ at, piece, link }: PartProps & { readonly link: EvidencePiece["links"][number] }) {
  const { target, locus, car } = link;
  const href =
    target.kind === "car" && car
      ? carEvidencePath(at.club, car.reference)
      : supportPath(at.club, `${target.kind}:${target.id}`);
  return (
    <li className="flex flex-wrap items-center justify-between gap-x-6 gap-y-2 border-hair border-b py-2">
      <span>
        <span className="block text-fine text-soft">
          {evidenceTargetWords[target.kind]}
          {car && target.kind !== "car" ? `, ${car.chassis}` : ""}
          {target.past ? ", superseded" : ""}
        </span>
        <a href={href}>{target.label}</a>
        {locus === "" ? null : <span className="text-soft">, {locus}</span>}
      </span>
      {link.mayUnlink && piece.withdrawn === undefined ? (
        <StepForm action={unlinkPiece.bind(null, at)} fields={{ link: link.id }}>
          Take the link away<span className="sr-only"> to {target.label}</span>
        </StepForm>
      ) : null}
    </li>
  );
}

function LinkForm({ at, piece }: PartProps) {
  if (piece.choices.length === 0) return null;
  return (
    <details className="pt-4 print:hidden">
      <summary className="min-h-11 py-2 font-semibold">Link it to something else</summary>
      <div className="pt-3">
        <EditForm action={linkPiece.bind(null, at)} submit="Link it">
          <div className="grid gap-1">
            <label htmlFor="field-for" className="font-semibold">
              What it supports
            </label>
            <select id="field-for" name="for" className="field">
              <TargetOptions choices={piece.choices} />
            </select>
          </div>
          <TextField
            name="locus"
            label="Where to look"
            hint="Page, frame or corner: p. 12, top left."
            maxLength={evidenceLimits.locus}
          />
        </EditForm>
      </div>
    </details>
  );
}

function CorrectForm({ at, piece }: PartProps) {
  return (
    <section aria-labelledby="says" className="print:hidden">
      <SectionHead id="says" title="What it shows" />
      <EditForm action={correctPiece.bind(null, at)} submit="Save" version={piece.version}>
        <input type="hidden" name="opened.caption" value={piece.caption} />
        <input type="hidden" name="opened.taken" value={piece.taken} />
        <TextField
          name="caption"
          label="What it shows"
          value={piece.caption}
          hint="No names of people: captions stay in the journal."
          maxLength={evidenceLimits.caption}
        />
        <TextField
          name="taken"
          label="Taken"
          value={piece.taken}
          hint="As far as it is known: 1971, 3/72, 12.3.1972 (day first), c. 1971, before March 1972."
          maxLength={60}
        />
      </EditForm>
    </section>
  );
}

function WithdrawForm({ at }: { readonly at: PieceAddress }) {
  return (
    <details className="print:hidden">
      <summary className="min-h-11 py-2 font-semibold">Withdraw it</summary>
      <div className="pt-3">
        <EditForm action={withdrawPiece.bind(null, at)} submit="Withdraw it">
          <TextField
            name="reason"
            label="Why"
            hint="The file is kept, and shown to nobody any more. The reason stays on record."
            maxLength={evidenceLimits.reason}
            required
          />
        </EditForm>
      </div>
    </details>
  );
}

function Withdrawn({ at, piece }: PartProps) {
  if (piece.withdrawn === undefined) return null;
  const { on, reason } = piece.withdrawn;
  return (
    <div className="grid gap-4">
      <Notice
        tone="note"
        text={{ what: `Withdrawn on ${on}: ${reason}`, remedy: "Its file is kept and not shown." }}
      />
      {piece.mayRestore ? <StepForm action={restorePiece.bind(null, at)}>Bring it back</StepForm> : null}
    </div>
  );
}

/** One photo or document: large, what it supports, what can be done with it. */
export function PiecePage({ club, piece }: PiecePageProps) {
  const at = { club: club.slug, evidence: piece.id };
  const car = piece.links.find((link) => link.car)?.car;
  const back = car
    ? { href: carEvidencePath(club.slug, car.reference), label: `Photos and documents of ${car.chassis}` }
    : { href: clubPath(club.slug), label: "Today" };
  return (
    <>
      <PageHead
        title={sayPiece(piece)}
        back={back}
        lead={car ? <a href={carPath(club.slug, car.reference)}>{car.chassis}</a> : undefined}
      />
      <div className="grid gap-x-12 gap-y-8 wide:grid-cols-[1fr_minmax(0,24rem)]">
        <div className="grid content-start gap-4">
          {piece.withdrawn === undefined ? (
            <Picture at={at} piece={piece} />
          ) : (
            <Withdrawn at={at} piece={piece} />
          )}
          <Turns at={at} piece={piece} />
        </div>
        <div className="grid content-start gap-8">
          <Facts piece={piece} />
          <section aria-labelledby="supports">
            <SectionHead id="supports" title="What it supports" />
            <ul>
              {piece.links.map((link) => (
                <SupportLine key={link.id} at={at} piece={piece} link={link} />
              ))}
            </ul>
            <LinkForm at={at} piece={piece} />
          </section>
          {piece.mayChange ? <CorrectForm at={at} piece={piece} /> : null}
          {piece.mayWithdraw ? <WithdrawForm at={at} /> : null}
        </div>
      </div>
    </>
  );
}
