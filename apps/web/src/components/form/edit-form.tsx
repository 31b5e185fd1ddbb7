"use client";
import { createContext, type ReactNode, useActionState, useContext, useEffect, useRef } from "react";
import { type FormAction, type FormState, untouched } from "../../lib/form-state";
import { Button } from "../button";
import { ConflictNotice } from "./conflict";
import { ErrorSummary } from "./error-summary";

const Sent = createContext<FormState>(untouched);

/** What the form around knows since it was sent; a form nobody sent outside of one. */
export const useForm = (): FormState => useContext(Sent);

/** For a form that is sent in another way: what its fields are to show of what is wrong. */
export const FormKnows = Sent.Provider;

export interface EditFormProps {
  readonly action: FormAction;
  /** Verb on the button: "Save", "Add the mark". */
  readonly submit: string;
  /** Name and value that the button sends, where a form has several. */
  readonly name?: string;
  readonly value?: string;
  /** `plain` for a form that is not the one thing its page is for. */
  readonly weight?: "mark" | "plain";
  /** Version of the record the form was opened with; sent along as `version`. */
  readonly version?: number;
  /** Where one goes without saving. */
  readonly cancel?: { readonly href: string; readonly label: string };
  /** As wide as the page, for a form of many rows. */
  readonly wide?: boolean;
  /** What fields are called in the summary of what is wrong: `numbers.2.from` → "Mark 3, from". Left out: their own labels. */
  readonly labels?: Readonly<Record<string, string>>;
  readonly children: ReactNode;
}

/**
 * A form behind a server action. Works without a script; refused, it shows again what was typed, says what is wrong in
 * one list that takes the focus, and at each field. Where two people changed the record, it shows both.
 */
export function EditForm({
  action,
  submit,
  name,
  value,
  weight = "mark",
  version,
  cancel,
  wide = false,
  labels = {},
  children,
}: EditFormProps) {
  const [state, send, pending] = useActionState(action, untouched);
  const head = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state.tries > 0) head.current?.focus();
  }, [state.tries]);
  const shown = state.conflict?.version ?? version;
  return (
    <Sent value={state}>
      <form action={send} className={`grid gap-6 ${wide ? "" : "max-w-3xl"}`} noValidate>
        <div ref={head} tabIndex={-1} className="outline-none empty:hidden">
          <ErrorSummary state={state} labels={labels} />
          {state.conflict === undefined ? null : <ConflictNotice conflict={state.conflict} />}
        </div>
        {shown === undefined ? null : <input key={shown} type="hidden" name="version" value={shown} />}
        {state.sure === undefined ? null : <input type="hidden" name="sure" value={state.sure} />}
        {children}
        <div className="flex flex-wrap items-center gap-x-6 gap-y-3">
          <Button
            weight={weight}
            {...(name === undefined ? {} : { name })}
            {...(value === undefined ? {} : { value })}
          >
            {state.conflict === undefined ? submit : `${submit} over the other change`}
            {state.sure === undefined ? null : " as it stands"}
          </Button>
          {cancel === undefined ? null : <a href={cancel.href}>{cancel.label}</a>}
          <span role="status" className="text-small text-soft">
            {pending ? "Saving…" : ""}
          </span>
        </div>
      </form>
    </Sent>
  );
}
