import type { JournalEntryPage as Loaded } from "@trunnion/api";
import type { ReactNode } from "react";
import { DefinitionTable } from "../../components/definition-table";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { carPath, journalPath } from "../../lib/path";
import { Changes, Who } from "./entry-item";
import { LocalTime, ZoneNote } from "./local-time";

export interface EntryPageProps {
  readonly club: ClubFace;
  readonly entry: Loaded;
}

/** One entry of the journal whole: in words, to the letter as it is kept, and its place in the chain. */
export function EntryPage({ club, entry }: EntryPageProps): ReactNode {
  const { sequence, at, what, car, reason, file, changes, before, after, hash, previousHash } = entry;
  return (
    <>
      <PageHead
        title={what}
        lead={`Entry no. ${sequence}`}
        back={{ href: journalPath(club.slug), label: "Journal" }}
      />
      <div className="grid max-w-4xl gap-8">
        <DefinitionTable
          rows={[
            { label: "When", value: <LocalTime at={at} /> },
            { label: "Who", value: <Who who={entry.who} /> },
            ...(car
              ? [{ label: "Car", value: <a href={carPath(club.slug, car.reference)}>{car.chassis}</a> }]
              : []),
            { label: "Why", value: reason ?? "" },
            ...(file === undefined ? [] : [{ label: "Read in from", value: file }]),
          ]}
        />
        <p className="text-small text-soft">
          <ZoneNote />
        </p>
        <section aria-labelledby="changes">
          <SectionHead id="changes" title="Before and after" />
          {changes.length === 0 ? <p>No field that people read changed.</p> : <Changes changes={changes} />}
        </section>
        <section aria-labelledby="kept">
          <SectionHead id="kept" title="As it is kept" />
          <Kept label="Before" json={before} />
          <Kept label="After" json={after} />
          <DefinitionTable
            rows={[
              { label: "Action", value: <code>{entry.action}</code> },
              {
                label: "Record",
                value: <code className="break-all">{`${entry.noun} ${entry.nounId}`}</code>,
              },
              { label: "Recorded at", value: <code>{at}</code> },
              { label: "Hash before", value: <code className="break-all">{previousHash}</code> },
              { label: "Hash", value: <code className="break-all">{hash}</code> },
            ]}
          />
        </section>
      </div>
    </>
  );
}

function Kept({ label, json }: { readonly label: string; readonly json: unknown }): ReactNode {
  return (
    <div className="pb-4">
      <h3 className="text-small text-soft">{label}</h3>
      {json === null || json === undefined ? (
        <p className="text-soft">nothing</p>
      ) : (
        <pre className="whitespace-pre-wrap break-words text-small">{JSON.stringify(json, null, 2)}</pre>
      )}
    </div>
  );
}
