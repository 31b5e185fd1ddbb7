"use client";
import type { SubmissionView } from "@trunnion/api";
import { useActionState, useEffect, useRef } from "react";
import { Button } from "../../components/button";
import { FormKnows } from "../../components/form/edit-form";
import { ErrorSummary } from "../../components/form/error-summary";
import { TextArea, TickField } from "../../components/form/form-field";
import { SectionHead } from "../../components/page-head";
import { type FormAction, untouched } from "../../lib/form-state";
import { isTyping, KeyHint } from "./key-hint";

const keys: Readonly<Record<string, string>> = { a: "accept", d: "decline", q: "query" };

/** Accept, decline or ask, each by one key outside of fields. */
export function DecisionForm({
  submission,
  action,
}: {
  readonly submission: SubmissionView;
  readonly action: FormAction;
}) {
  const [state, send, pending] = useActionState(action, untouched);
  const form = useRef<HTMLFormElement>(null);
  const head = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state.tries > 0) head.current?.focus();
  }, [state.tries]);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const decision = keys[event.key];
      if (decision === undefined || isTyping(event)) return;
      const field = form.current?.elements.namedItem("text");
      event.preventDefault();
      // A question and a refusal need words first: the key leads to where they are written.
      if (decision !== "accept" && field instanceof HTMLTextAreaElement && field.value.trim() === "")
        field.focus();
      else form.current?.querySelector<HTMLButtonElement>(`button[value=${decision}]`)?.click();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, []);
  return (
    <FormKnows value={state}>
      <section aria-labelledby="decide">
        <SectionHead id="decide" title="Decide" />
        <form ref={form} action={send} noValidate className="grid max-w-3xl gap-5">
          <div ref={head} tabIndex={-1} className="outline-none empty:hidden">
            <ErrorSummary state={state} labels={{}} />
          </div>
          <input type="hidden" name="version" value={state.conflict?.version ?? submission.version} />
          <TextArea
            name="text"
            label="Reason, or your question"
            rows={3}
            hint="The owner reads it. Needed to decline and to ask. No names of other people."
          />
          {submission.keeperChanged ? (
            <TickField
              name="keeperKnown"
              label="Whoever handed it in does not keep the car any more; it was changed in their time"
            />
          ) : null}
          <div className="flex flex-wrap items-center gap-4">
            <Button weight="mark" name="do" value="accept">
              Accept <KeyHint of="A" />
            </Button>
            <Button name="do" value="decline">
              Decline <KeyHint of="D" />
            </Button>
            <Button name="do" value="query">
              Ask <KeyHint of="Q" />
            </Button>
            <span role="status" className="text-small text-soft">
              {pending ? "Saving…" : ""}
            </span>
          </div>
        </form>
      </section>
    </FormKnows>
  );
}
