import type { RollStudy } from "@trunnion/api";
import { Button } from "../../components/button";
import { Caution } from "../../components/caution";
import { fieldId } from "../../components/form/field-id";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { cautions } from "../../lib/caution";
import { rollPath, settingSheetsPath } from "../../lib/path";
import { RollHands } from "./roll-hands";
import { sayRecorded } from "./say";

export interface RollPageProps {
  readonly club: ClubFace;
  readonly study: RollStudy;
  /** What was typed, by field; also what the sliders were left at without a script. */
  readonly typed: Readonly<Record<string, string>>;
}

/** Springs and bars against roll, load transfer and ride: what the record says, what it lacks, and the sliders. */
export function RollPage({ club, study, typed }: RollPageProps) {
  const { reference, chassis } = study.of;
  const here = rollPath(club.slug, reference);
  return (
    <>
      <PageHead
        title="Springs and bars in roll"
        back={{ href: settingSheetsPath(club.slug, reference), label: "What it is set to" }}
        plate={<Plate chassis={chassis} />}
        lead="Move a spring or a bar, and see what the car makes of it."
      />
      <div className="grid grid-cols-1 gap-12">
        {study.car === undefined ? null : (
          <RollHands car={study.car} diameters={study.diameters} action={here} typed={typed} />
        )}
        <Figures study={study} typed={typed} here={here} />
        <Caution cautions={cautions.study} />
      </div>
    </>
  );
}

function Figures({ study, typed, here }: Pick<RollPageProps, "study" | "typed"> & { readonly here: string }) {
  const lacking = new Set(study.lacking);
  const errors = new Map(study.problems.map(({ field, message }) => [field, message]));
  return (
    <section aria-labelledby="figures">
      <SectionHead id="figures" title="What it is worked out from" />
      {lacking.size === 0 && errors.size === 0 ? null : (
        <div className="pb-4">
          <Notice
            text={{
              what:
                errors.size > 0
                  ? "Something typed cannot be read."
                  : `${lacking.size} ${lacking.size === 1 ? "figure is" : "figures are"} not on the record, and none is guessed.`,
              remedy: "Type what you measured or were told; it is used here and not written to the record.",
            }}
          />
        </div>
      )}
      <form action={here} className="grid max-w-3xl gap-4 sm:grid-cols-2 wide:max-w-none wide:grid-cols-4">
        {study.fields.map((field) => {
          const id = fieldId(field.name);
          const error = errors.get(field.name);
          const recorded = sayRecorded(field);
          return (
            <div key={field.name} className="grid content-start gap-1">
              <label htmlFor={id} className="font-semibold">
                {field.label}
                {field.unit === "" ? "" : `, ${field.unit}`}
              </label>
              <input
                id={id}
                name={field.name}
                defaultValue={typed[field.name] ?? ""}
                maxLength={80}
                placeholder={recorded.value}
                className="field"
                aria-describedby={error === undefined ? `${id}-hint` : `${id}-hint ${id}-error`}
                {...(error === undefined ? {} : { "aria-invalid": true })}
              />
              <p id={`${id}-hint`} className="text-fine text-soft">
                {recorded.words}
              </p>
              {error === undefined ? null : (
                <p id={`${id}-error`} className="border-red border-l-4 pl-2 text-small">
                  {error}
                </p>
              )}
            </div>
          );
        })}
        <div className="col-span-full">
          <Button weight="mark">Work it out</Button>
        </div>
      </form>
    </section>
  );
}
