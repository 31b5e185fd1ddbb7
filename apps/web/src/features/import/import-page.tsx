import type { ImportView } from "@trunnion/api";
import { Notice } from "../../components/notice";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { importPath, importsPath } from "../../lib/path";
import { type Deed, doImport } from "./action";
import { DeedForm } from "./deed-form";
import { MappingForm } from "./mapping-form";
import { PreviewSection, RowSection } from "./preview-section";
import { isUnderWay, sayCounts, sayStatus } from "./status";

export interface ImportPageProps {
  readonly club: ClubFace;
  readonly view: ImportView;
}

interface DeedButton {
  readonly deed: Deed;
  readonly submit: string;
  readonly text: string;
}

function deedsFor(view: ImportView): readonly DeedButton[] {
  const { status, stage, silent, carsAdded, carsChanged } = view;
  const forget = {
    deed: "forget",
    submit: "Forget this file",
    text: "Nothing of it is in the register.",
  } as const;
  const undo = {
    deed: "undo",
    submit: "Undo this import",
    text: "As one step: cars it added go, cars it changed are as they were. Refused when somebody changed one of them since.",
  } as const;
  const goOn = { deed: "begin", submit: "Go on where it stopped", text: "What was read in stands." } as const;
  if (status === "planned" && stage === "looked" && view.failure === null) {
    const all = carsAdded + carsChanged;
    const submit = `Read in ${all.toLocaleString("en-GB")} ${all === 1 ? "car" : "cars"}`;
    const begin = { deed: "begin", submit, text: "It can be undone as one step." } as const;
    const again = {
      deed: "look",
      submit: "Look through it again",
      text: "If the register changed meanwhile.",
    } as const;
    return [begin, again, forget];
  }
  if (status === "planned" && (silent || view.failure !== null)) {
    return [{ deed: "look", submit: "Look through it again", text: "It was interrupted." }, forget];
  }
  if (status === "planned") return stage === "mapping" ? [forget] : [];
  if (status === "interrupted" || status === "failed") return [goOn, undo];
  return status === "done" && carsAdded + carsChanged > 0 ? [undo] : [];
}

function Progress({ view }: { readonly view: ImportView }) {
  const { rowsDone, rowsRead } = view;
  const told = `${rowsDone.toLocaleString("en-GB")} of ${rowsRead.toLocaleString("en-GB")} rows`;
  return (
    <div className="grid max-w-prose gap-2">
      <progress
        value={rowsDone}
        max={Math.max(rowsRead, 1)}
        aria-label={told}
        className="h-4 w-full accent-ink"
      />
      <p role="status">{told}</p>
    </div>
  );
}

function Notes({ club, view }: { readonly club: string; readonly view: ImportView }) {
  const { earlier, failure, unknownHeadings } = view;
  return (
    <>
      {failure === null ? null : (
        <Notice
          text={{
            what: failure,
            remedy: view.status === "failed" ? "What was read in before that stands." : "",
          }}
        />
      )}
      {earlier === null ? null : (
        <p className="max-w-prose border-line border-l-4 py-1 pl-4">
          This very file was read in on {earlier.recordedAt.toISOString().slice(0, 10)}: see{" "}
          <a href={importPath(club, earlier.id)}>that import</a>. Read again it changes only what was changed
          since.
        </p>
      )}
      {unknownHeadings.length === 0 ? null : (
        <p className="max-w-prose text-small text-soft">Kept as remarks: {unknownHeadings.join(", ")}.</p>
      )}
    </>
  );
}

/** One import: its columns, what it would change, how far it is, what it did, what can be done with it. */
export function ImportPage({ club, view }: ImportPageProps) {
  const underWay = isUnderWay(view);
  const asked = view.status === "planned" && view.stage === "mapping";
  const deeds = deedsFor(view);
  return (
    <>
      {underWay || view.status === "interrupted" ? (
        <meta httpEquiv="refresh" content={underWay ? "2" : "15"} />
      ) : null}
      <PageHead
        title={view.file}
        back={{ href: importsPath(club.slug), label: "Imports" }}
        lead={
          <>
            {view.rowsRead.toLocaleString("en-GB")} rows{view.sheet === null ? "" : `, sheet “${view.sheet}”`}
            : {sayStatus(view)}
          </>
        }
      />
      <div className="grid gap-8">
        <Notes club={club.slug} view={view} />
        {asked ? <MappingForm club={club.slug} view={view} /> : null}
        {underWay || view.status === "interrupted" ? <Progress view={view} /> : null}
        {asked ? null : <p className="text-lead">{sayCounts(view)}</p>}
        <div className="flex flex-wrap gap-x-10 gap-y-6">
          {deeds.map(({ deed, submit, text }, index) => (
            <div key={deed} className="grid content-start gap-1">
              <DeedForm
                action={doImport.bind(null, club.slug, view.id, deed)}
                submit={submit}
                main={index === 0 && deed !== "undo" && deed !== "forget"}
              />
              <p className="max-w-72 text-fine text-soft">{text}</p>
            </div>
          ))}
        </div>
        {/* A link followed while the page waits would call off its looking again. */}
        {underWay ? null : (
          <>
            <RowSection club={club.slug} view={view} />
            <PreviewSection club={club.slug} view={view} />
          </>
        )}
      </div>
    </>
  );
}
