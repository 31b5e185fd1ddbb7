"use client";
import type { SubmissionPage } from "@trunnion/api";
import { characteristicBook, emptyModification, type SubmissionContent } from "@trunnion/register";
import { type FormEvent, useActionState, useMemo, useRef, useState } from "react";
import { Button } from "../../components/button";
import { ConflictNotice } from "../../components/form/conflict";
import { FormKnows } from "../../components/form/edit-form";
import { ErrorSummary } from "../../components/form/error-summary";
import { ChoiceField, TextArea } from "../../components/form/form-field";
import { Notice } from "../../components/notice";
import { SectionHead } from "../../components/page-head";
import type { Leader } from "../../components/plan";
import { type FormAction, type FormState, untouched } from "../../lib/form-state";
import { submissionConsequencePath, submissionPath } from "../../lib/path";
import { useAutosave } from "./autosave";
import { basisIn } from "./basis";
import { AddButtons, ChangeSection } from "./change-section";
import { ConsequencePanel } from "./consequence-panel";
import { contentOfForm, editContent, editOf } from "./draft";
import { DraftConflict } from "./draft-conflict";
import { errorsOf, useLive } from "./draft-live";
import { useEarly } from "./early";
import { useHandIn } from "./hand-in";
import { lineLabels } from "./line-name";
import { PartChooser } from "./part-chooser";
import { PhotoForm } from "./photo-form";
import { PhotoSection } from "./photo-section";
import { SaveLine } from "./save-line";
import { useOfflinePage } from "./use-offline-page";
import { usePhotos } from "./use-photos";
import { useTicked } from "./use-ticked";

export interface DraftFormProps {
  readonly club: string;
  readonly page: SubmissionPage;
  readonly leaders: readonly Leader[];
  readonly sideWords: { readonly left: string; readonly right: string };
  /** What the address asks to be shown of the plan. */
  readonly shown: { readonly assembly: string; readonly find: string; readonly ticked: string };
  readonly action: FormAction;
}

/** The form of a change: saved as it is typed, with what it does beside it. Without a script its buttons do the same. */
export function DraftForm({ club, page, leaders, sideWords, shown: asked, action }: DraftFormProps) {
  const { submission, ground } = page;
  const { id, status } = submission;
  const [sent, send] = useActionState(action, untouched);
  const [content, setContent] = useState(submission.content);
  // Counts up when fields are to show something else than was typed into them.
  const [drawn, setDrawn] = useState(0);
  const [shown, setShown] = useState({ assembly: asked.assembly, find: asked.find });
  const ticked = useTicked(asked.ticked);
  const form = useRef<HTMLFormElement>(null);
  const head = useRef<HTMLDivElement>(null);
  const restoring = useRef(false);
  const redraw = (next: SubmissionContent) => {
    setContent(next);
    setDrawn((count) => count + 1);
  };
  const { state, keeper } = useAutosave({
    club,
    id,
    version: submission.version,
    content: submission.content,
    restore: (kept) => {
      restoring.current = true;
      redraw(kept);
    },
  });
  useOfflinePage(state);
  const live = useLive(content, page);
  const book = useMemo(() => characteristicBook(ground.own), [ground]);
  const modifications = content.modifications.length === 0 ? [emptyModification] : content.modifications;
  const recorded = useMemo(
    () => basisIn(ground, book).stateOn(live.proposed.on),
    [ground, book, live.proposed.on],
  );
  const changed = () => {
    if (!form.current) return;
    const next = contentOfForm(new FormData(form.current), content);
    setContent(next);
    keeper.keep(next);
  };
  useEarly({ form, drawn, restoring, changed });
  const photos = usePhotos({ club, id, have: page.evidence });
  const handIn = useHandIn({
    club,
    id,
    keeper,
    photos: photos.flush,
    look: async () => {
      const now = form.current ? contentOfForm(new FormData(form.current), content) : content;
      return (await live.look(now)).problems.length;
    },
    wrong: () => window.requestAnimationFrame(() => head.current?.focus()),
  });
  const { tried, sending, refusal } = handIn;
  const errors = errorsOf(live.problems, content, tried || sent.tries > 0);
  const known: FormState = {
    tries: 0,
    typed: {},
    errors,
    ...(refusal === undefined ? {} : { refusal }),
  };
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { submitter } = event.nativeEvent as SubmitEvent;
    const pressed = submitter instanceof HTMLButtonElement ? submitter.value : "save";
    const data = new FormData(event.currentTarget);
    const typed = contentOfForm(data, content);
    if (pressed === "submit" || pressed === "answer" || pressed === "withdraw") {
      keeper.keep(typed);
      return void handIn.take(pressed, typed.word ?? "");
    }
    const edit = editOf(pressed, data);
    if (edit === undefined) {
      setContent(typed);
      keeper.keep(typed);
      void keeper.flush();
      return;
    }
    const next = editContent(typed, edit, book);
    redraw(next);
    keeper.keep(next);
    if (edit.kind === "add") ticked.clear();
  };

  const idle = modifications.every(({ changes }) => changes.every(({ after }) => after.trim() === ""));
  return (
    <FormKnows value={sent.tries > 0 ? { ...sent, typed: {}, tries: 0 } : known}>
      <form ref={form} action={send} onSubmit={submit} onInput={changed} noValidate className="grid gap-10">
        {/* Enter in a field presses the first button of a form: that must not be one that takes something out. */}
        <button type="submit" name="do" value="save" tabIndex={-1} aria-hidden="true" className="sr-only">
          Save
        </button>
        <div ref={head} tabIndex={-1} className="outline-none empty:hidden">
          {refusal !== undefined || tried ? (
            <ErrorSummary
              state={known}
              labels={lineLabels(content, book, sideWords)}
              remedy="Not handed in yet; the draft is kept as you typed it."
            />
          ) : null}
          {sent.tries > 0 ? (
            <ErrorSummary state={sent} labels={lineLabels(content, book, sideWords)} />
          ) : null}
          {sent.conflict === undefined ? null : <ConflictNotice conflict={sent.conflict} />}
          {state.at === "refused" ? <Notice text={state.text} /> : null}
          {state.at === "conflict" ? <DraftConflict conflict={state} keeper={keeper} /> : null}
        </div>
        <input type="hidden" name="version" value={sent.conflict?.version ?? submission.version} />
        <div className="grid gap-x-12 gap-y-8 wide:grid-cols-[1fr_minmax(0,24rem)]">
          <div className="grid min-w-0 content-start gap-8">
            <div className="max-w-60">
              <ChoiceField
                key={drawn}
                name="units"
                label="Your units"
                value={content.units}
                options={[
                  { value: "metric", label: "Metric" },
                  { value: "imperial", label: "Imperial" },
                ]}
              />
            </div>
            {modifications.map((modification, of) => (
              <ChangeSection
                // biome-ignore lint/suspicious/noArrayIndexKey: changes are told apart by their place, and so are their fields
                key={`${drawn} ${of}`}
                {...{ modification, of, content, book, recorded, sideWords }}
                mixes={live.mixes}
                count={modifications.length}
              />
            ))}
          </div>
          <section aria-labelledby="does" aria-live="polite" className="grid min-w-0 content-start gap-3">
            <SectionHead id="does" title="What it does" />
            <ConsequencePanel
              proposed={live.proposed}
              idle={idle}
              workingOf={(one) => submissionConsequencePath(club, id, one)}
            />
          </section>
        </div>
        <details
          open={
            modifications.every(({ changes }) => changes.length === 0) ||
            shown.assembly !== "" ||
            shown.find !== ""
          }
        >
          <summary className="min-h-11 cursor-pointer border-ink border-t-2 py-3 font-semibold text-lead">
            Add another part
          </summary>
          <div className="grid gap-4 pb-2">
            <PartChooser
              {...{ book, leaders, ticked, ...shown }}
              linkTo={(assembly) => submissionPath(club, id, { assembly, ticked: asked.ticked })}
              choose={setShown}
            />
            <AddButtons modifications={modifications} />
          </div>
        </details>
        <PhotoSection {...{ club, photos, content, book }} />
        <div className="grid max-w-3xl gap-4">
          <SectionHead title={status === "queried" ? "Your answer" : "Hand it in"} />
          <TextArea
            name="text"
            label={status === "queried" ? "Answer" : "A word to the registrar"}
            value={content.word ?? ""}
            rows={2}
            {...(status === "queried" ? {} : { hint: "If something needs saying; may stay empty." })}
          />
          <div className="flex flex-wrap items-center gap-4">
            <Button weight="mark" name="do" value={status === "queried" ? "answer" : "submit"}>
              {status === "queried" ? "Send the answer" : "Hand in"}
            </Button>
            <Button name="do" value="save">
              Save
            </Button>
            <Button name="do" value="withdraw">
              Withdraw
            </Button>
            <SaveLine state={state} />
          </div>
          <p role="status" className="empty:hidden">
            {sending === "sending" ? "Handing in…" : ""}
            {sending === "noSignal"
              ? "No signal: nothing was handed in yet. All you typed is kept on this device; press again when there is a signal."
              : ""}
          </p>
        </div>
      </form>
      <PhotoForm {...{ club, id }} />
    </FormKnows>
  );
}
