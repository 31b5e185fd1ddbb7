"use client";
import { type ReactNode, useActionState } from "react";
import { Button } from "../../components/button";
import { ErrorSummary } from "../../components/form/error-summary";
import { type FormAction, untouched } from "../../lib/form-state";

export interface DeedFormProps {
  readonly action: FormAction;
  /** Verb on the button. */
  readonly submit: string;
  /** The one thing that matters on the page. */
  readonly main: boolean;
  readonly children?: ReactNode;
}

/** One button that does something, and why it could not. */
export function DeedForm({ action, submit, main, children }: DeedFormProps) {
  const [state, send, pending] = useActionState(action, untouched);
  return (
    <form action={send} className="grid content-start justify-items-start gap-2">
      <ErrorSummary state={state} labels={{}} />
      {children}
      <Button weight={main ? "mark" : "plain"}>{submit}</Button>
      <span role="status" className="text-small text-soft empty:hidden">
        {pending ? "Working…" : ""}
      </span>
    </form>
  );
}
