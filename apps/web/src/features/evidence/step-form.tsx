"use client";
import { type ReactNode, useActionState } from "react";
import { Button } from "../../components/button";
import { Notice } from "../../components/notice";
import { type FormAction, untouched } from "../../lib/form-state";

export interface StepFormProps {
  readonly action: FormAction;
  /** Sent along. */
  readonly fields?: Readonly<Record<string, string>>;
  /** Verb on the button. */
  readonly children: ReactNode;
}

/** One step that needs no more than a button; refused, it says so above it. */
export function StepForm({ action, fields = {}, children }: StepFormProps) {
  const [state, send] = useActionState(action, untouched);
  return (
    <form action={send} className="grid gap-2">
      {state.refusal === undefined ? null : <Notice text={state.refusal} />}
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <div>
        <Button>{children}</Button>
      </div>
    </form>
  );
}
