"use client";
import { useActionState, useEffect, useId, useRef, useState } from "react";
import { Button } from "../../components/button";
import { Notice } from "../../components/notice";
import { ImportOutcome, type ImportOutcomeProps } from "./import-outcome";
import { type ImportState, nothingRead } from "./import-state";

export interface ImportFormProps extends Pick<ImportOutcomeProps, "sideWords"> {
  readonly action: (before: ImportState, data: FormData) => Promise<ImportState>;
  /** Revision of the draft that is read into. */
  readonly revision: number;
  /** Largest file, in bytes. */
  readonly limit: number;
}

/** Chooses a table, shows what it would change, then reads it in; the file need be chosen once only. */
export function ImportForm({ action, revision, limit, sideWords }: ImportFormProps) {
  const [state, send, pending] = useActionState(action, nothingRead);
  const [tooLarge, setTooLarge] = useState(false);
  const outcome = useRef<HTMLDivElement>(null);
  const id = useId();
  useEffect(() => {
    if (state !== nothingRead) outcome.current?.focus();
  }, [state]);
  const { report, file } = state;
  const ready = report !== undefined && report.problems.length === 0 && report.changes.length > 0;
  return (
    <form action={send} className="grid gap-6">
      <input type="hidden" name="revision" value={revision} />
      {file === undefined ? null : (
        <>
          <input type="hidden" name="name" value={file.name} />
          <input type="hidden" name="content" value={file.content} />
        </>
      )}
      <div className="grid max-w-3xl gap-6">
        <div className="grid gap-1">
          <label htmlFor={id} className="font-semibold">
            Table
          </label>
          <input
            id={id}
            type="file"
            name="table"
            accept=".csv,.txt,.tsv,.xlsx,.ods"
            className="field"
            aria-describedby={`${id}-hint`}
            onChange={({ target }) => {
              const beyond = (target.files?.[0]?.size ?? 0) > limit;
              if (beyond) target.value = "";
              setTooLarge(beyond);
            }}
          />
          <p id={`${id}-hint`} className="text-fine text-soft">
            {file === undefined
              ? `CSV, XLSX or ODS, at most ${limit / 1000} kB; one entry a row, under the headings of “Save as CSV”.`
              : `${file.name} was looked at; choose another only to look at that instead.`}
          </p>
          {tooLarge ? (
            <p role="alert" className="border-red border-l-4 pl-2 text-small">
              That file is larger than {limit / 1000} kB: it is no specification. Choose another.
            </p>
          ) : null}
        </div>
        <fieldset className="grid gap-1">
          <legend className="font-semibold">What it does in the draft</legend>
          <Mode
            value="merge"
            chosen={state.mode}
            label="Its rows take the place of what holds for the same cars; the rest stays"
          />
          <Mode value="replace" chosen={state.mode} label="It is all the draft says" />
        </fieldset>
        <div className="flex flex-wrap items-center gap-6">
          <Button name="step" value="look">
            Show what would change
          </Button>
          {ready ? (
            <Button name="step" value="read" weight="mark">
              Read it in
            </Button>
          ) : null}
          <span role="status" className="text-small text-soft">
            {pending ? "Reading…" : ""}
          </span>
        </div>
      </div>
      <div ref={outcome} tabIndex={-1} className="outline-none">
        {state.refusal === undefined ? null : <Notice text={state.refusal} />}
        {report === undefined ? null : <ImportOutcome report={report} sideWords={sideWords} />}
      </div>
    </form>
  );
}

interface ModeProps {
  readonly value: ImportState["mode"];
  readonly chosen: ImportState["mode"];
  readonly label: string;
}

function Mode({ value, chosen, label }: ModeProps) {
  return (
    <label className="inline-flex min-h-11 cursor-pointer items-center gap-3">
      <input
        key={chosen}
        type="radio"
        name="mode"
        value={value}
        defaultChecked={value === chosen}
        className="size-5 shrink-0 accent-ink"
      />
      {label}
    </label>
  );
}
