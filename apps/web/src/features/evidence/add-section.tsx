import type { TargetChoice } from "@trunnion/api";
import {
  type EvidenceTargetKind,
  evidenceLimits,
  evidenceTargetKinds,
  evidenceTargetWords,
} from "@trunnion/register";
import { SectionHead } from "../../components/page-head";
import { evidenceFormPath } from "../../lib/path";
import type { Outcome } from "./outcome";
import { PlainField, PlainTick } from "./plain-field";
import { UploadForm } from "./upload-form";

/** Things to choose from, by kind, as groups of a list. */
export function TargetOptions({ choices }: { readonly choices: readonly TargetChoice[] }) {
  const kinds = evidenceTargetKinds.filter((kind) => choices.some((choice) => choice.kind === kind));
  return kinds.map((kind: EvidenceTargetKind) => (
    <optgroup key={kind} label={evidenceTargetWords[kind]}>
      {choices
        .filter((choice) => choice.kind === kind)
        .map(({ reference, label }) => (
          <option key={reference} value={reference}>
            {label}
          </option>
        ))}
    </optgroup>
  ));
}

export interface AddSectionProps {
  readonly club: string;
  /** The page it stands on. */
  readonly back: string;
  /** What it may support; one alone is not asked for. */
  readonly choices: readonly TargetChoice[];
  /** The one chosen to begin with. */
  readonly chosen?: string;
  readonly outcome?: Outcome;
}

function TargetField({ choices, chosen }: Pick<AddSectionProps, "choices" | "chosen">) {
  const [only] = choices;
  if (choices.length === 1 && only) return <input type="hidden" name="for" value={only.reference} />;
  return (
    <div className="grid gap-1">
      <label htmlFor="evidence-for" className="font-semibold">
        What it supports
      </label>
      <select id="evidence-for" name="for" defaultValue={chosen} className="field">
        <TargetOptions choices={choices} />
      </select>
    </div>
  );
}

/** The form that adds photos and documents. */
export function AddSection({ club, back, choices, chosen, outcome }: AddSectionProps) {
  const typed = outcome?.typed;
  return (
    <section aria-labelledby="add" className="print:hidden">
      <SectionHead id="add" title="Add photos or documents" />
      <UploadForm
        club={club}
        action={evidenceFormPath(club)}
        back={back}
        {...(outcome === undefined ? {} : { refusal: outcome.text })}
      >
        <TargetField choices={choices} {...(chosen === undefined ? {} : { chosen })} />
        <PlainField
          name="caption"
          label="What it shows"
          hint="No names of people: captions stay in the journal."
          value={typed?.caption ?? ""}
          maxLength={evidenceLimits.caption}
        />
        <div className="grid gap-5 sm:grid-cols-2">
          <PlainField
            name="taken"
            label="Taken"
            hint="Left empty, what the camera says. As far as it is known: 1971, 3/72, c. 1971."
            value={typed?.taken ?? ""}
            maxLength={60}
          />
          <PlainField
            name="locus"
            label="Where to look"
            hint="Page, frame or corner: p. 12, top left."
            value={typed?.locus ?? ""}
            maxLength={evidenceLimits.locus}
          />
        </div>
        <PlainTick
          name="keepLocation"
          label="Keep the place in the file"
          hint="Else place, camera and names are taken out of pictures before they are kept. A PDF is kept as it is, with all it says."
          ticked={typed?.keepLocation ?? false}
        />
      </UploadForm>
    </section>
  );
}
