import type { MergePreview } from "@trunnion/api";
import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { carPath, mergePath, numbersPath } from "../../lib/path";
import { merge } from "./action";

interface MergePageProps {
  readonly club: ClubFace;
  readonly preview: MergePreview;
}

const becomes = {
  taken: "is taken, since the other record says nothing",
  noted: "goes into a note of the history, since the other record says something else",
  same: "says the same",
} as const;

/** What making two records one would do, before it is done. */
export function MergePage({ club, preview }: MergePageProps) {
  const { into, from, parts, facts } = preview;
  const cars = {
    into: into.reference,
    from: from.reference,
    intoVersion: into.version,
    fromVersion: from.version,
  };
  return (
    <>
      <PageHead
        title="Two records, one car"
        back={{ href: numbersPath(club.slug), label: "Numbers" }}
        lead={
          <span className="inline-flex flex-wrap items-center gap-2">
            <SmallPlate chassis={from.reference} href={carPath(club.slug, from.reference)} /> goes into
            <SmallPlate chassis={into.reference} href={carPath(club.slug, into.reference)} />
          </span>
        }
      />
      <div className="grid max-w-3xl gap-10">
        <section aria-labelledby="moves">
          <SectionHead id="moves" title="What happens" />
          {parts.length + facts.length === 0 ? (
            <p>Nothing is recorded on {from.reference} that would move.</p>
          ) : null}
          <ul className="list-disc pl-5">
            {parts.map(({ what, moved, stays }) => (
              <li key={what}>
                {what}: {moved} {moved === 1 ? "moves" : "move"}
                {stays === 0
                  ? ""
                  : `, ${stays} ${stays === 1 ? "stays" : "stay"} with the pointer, being there already`}
              </li>
            ))}
            {facts.map(({ what, said, becomes: way }) => (
              <li key={what}>
                {what}, “{said}”, {becomes[way]}
              </li>
            ))}
          </ul>
          <p className="max-w-prose pt-3">
            Nothing is deleted. {from.reference} stays as a pointer to {into.reference} and can no longer be
            changed. There is no way back in one step.
          </p>
          <p className="pt-2">
            <a href={mergePath(club.slug, from.reference, into.reference)}>The other way round</a>
          </p>
        </section>
        <EditForm
          action={merge.bind(null, { club: club.slug, ...cars })}
          submit="Make them one"
          cancel={{ href: numbersPath(club.slug), label: "Leave them two" }}
          labels={{ reason: "Why" }}
        >
          <TextField name="reason" label="Why" hint="For the journal. Name no persons." maxLength={500} />
        </EditForm>
      </div>
    </>
  );
}
