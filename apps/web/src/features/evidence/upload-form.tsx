"use client";
import type { RefusalText } from "@trunnion/register";
import { useRouter } from "next/navigation";
import { type FormEvent, type ReactNode, useRef, useState } from "react";
import { Button } from "../../components/button";
import { Notice } from "../../components/notice";
import { evidencePath } from "../../lib/path";
import { ACCEPT } from "./accept";
import { refusedBeforehand, sendFile, type UploadState } from "./upload-client";
import { useDrop } from "./use-drop";

export interface UploadFormProps {
  readonly club: string;
  /** Where the form is sent. */
  readonly action: string;
  /** The page it stands on, to come back to. */
  readonly back: string;
  /** What came of it when it was sent without a script. */
  readonly refusal?: RefusalText;
  /** Fields that say what all the files support and show. */
  readonly children: ReactNode;
}

interface Upload {
  readonly key: number;
  readonly file: File;
  readonly state: UploadState;
}

const nothing: RefusalText = {
  what: "No file is chosen yet.",
  remedy: "Choose one, or drop it on this page.",
};

function UploadLine({ club, upload }: { readonly club: string; readonly upload: Upload }) {
  const { file, state } = upload;
  return (
    <li className="grid gap-1 border-hair border-b py-2">
      <span className="break-all font-semibold">{file.name}</span>
      {state.at === "waiting" ? <span className="text-soft">waits</span> : null}
      {state.at === "going" ? (
        <progress
          value={state.part}
          max={1}
          aria-label={`${file.name}, sent`}
          className="w-full accent-ink"
        />
      ) : null}
      {state.at === "kept" ? (
        <span>
          <a href={evidencePath(club, state.evidence)}>
            {state.isNew ? "Added" : "On record already, linked now"}
          </a>
        </span>
      ) : null}
      {state.at === "refused" ? <Notice text={state.text} /> : null}
    </li>
  );
}

/** Sends files one after the other, so that one that is refused keeps none of the others out. */
function useUploads(action: string) {
  const router = useRouter();
  const [uploads, setUploads] = useState<readonly Upload[]>([]);
  const count = useRef(0);
  const set = (key: number, state: UploadState) =>
    setUploads((all) => all.map((one) => (one.key === key ? { ...one, state } : one)));
  const send = async (form: FormData, files: readonly File[]) => {
    const waiting = files.map((file) => ({ key: ++count.current, file, state: { at: "waiting" } as const }));
    setUploads((all) => [...all, ...waiting]);
    for (const { key, file } of waiting) {
      const refusal = refusedBeforehand(file);
      if (refusal) set(key, { at: "refused", text: refusal });
      else set(key, await sendFile(action, { form, file }, (state) => set(key, state)));
    }
    router.refresh();
  };
  return { uploads, send };
}

/**
 * Adds photos and documents. Without a script a plain form that sends all at once; with one, files can be dropped on the
 * page and are sent one by one, each with how far it is and what came of it.
 */
export function UploadForm({ club, action, back, refusal, children }: UploadFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [wrong, setWrong] = useState(refusal);
  const { uploads, send } = useUploads(action);
  const sendAll = async (files: readonly File[]) => {
    const current = form.current;
    if (!current) return;
    setWrong(files.length === 0 ? nothing : undefined);
    const said = new FormData(current);
    for (const input of current.querySelectorAll<HTMLInputElement>("input[type=file]")) input.value = "";
    await send(said, files);
  };
  const over = useDrop(sendAll);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const inputs = event.currentTarget.querySelectorAll<HTMLInputElement>("input[type=file]");
    void sendAll([...inputs].flatMap((input) => [...(input.files ?? [])]));
  };
  return (
    <form
      ref={form}
      action={action}
      method="post"
      encType="multipart/form-data"
      onSubmit={submit}
      data-over={over}
      className="drop-zone grid max-w-3xl gap-5"
    >
      {wrong === undefined ? null : <Notice text={wrong} />}
      <input type="hidden" name="back" value={back} />
      <div className="grid gap-1">
        <label htmlFor="evidence-files" className="font-semibold">
          Photos or documents
        </label>
        <input
          id="evidence-files"
          type="file"
          name="file"
          multiple
          accept={ACCEPT}
          aria-describedby="evidence-files-hint"
          className="field"
        />
        <p id="evidence-files-hint" className="text-fine text-soft">
          JPEG, PNG, WebP, AVIF, TIFF or PDF; up to 40 MB each, 20 at once.
          <span className="scriptless:hidden"> Or drop them anywhere on this page.</span>
        </p>
      </div>
      <div className="hidden gap-1 pointer-coarse:grid">
        <label htmlFor="evidence-camera" className="font-semibold">
          Or take one now
        </label>
        <input
          id="evidence-camera"
          type="file"
          name="file"
          accept="image/jpeg"
          capture="environment"
          className="field"
        />
      </div>
      {children}
      <div>
        <Button weight="mark">Add to the record</Button>
      </div>
      <ul aria-live="polite" className="grid empty:hidden">
        {uploads.map((upload) => (
          <UploadLine key={upload.key} club={club} upload={upload} />
        ))}
      </ul>
    </form>
  );
}
