"use client";
import type { QueuedSubmission } from "@trunnion/api";
import { submissionStatusWords } from "@trunnion/register";
import { useActionState, useEffect, useRef } from "react";
import { Button } from "../../components/button";
import { FormKnows } from "../../components/form/edit-form";
import { ErrorSummary, type ErrorSummaryProps } from "../../components/form/error-summary";
import { TextArea } from "../../components/form/form-field";
import { SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { type FormAction, type FormState, untouched } from "../../lib/form-state";
import { submissionPath } from "../../lib/path";
import { DifferenceTable } from "./difference-table";
import { isTyping, KeyHint } from "./key-hint";
import { photoColumn } from "./line-photos";

export interface QueueFormProps {
  readonly club: string;
  readonly waiting: readonly QueuedSubmission[];
  readonly sideWords: { readonly left: string; readonly right: string };
  readonly action: FormAction;
}

const decisions: Readonly<Record<string, string>> = { a: "accept", d: "decline", q: "query" };

/** Moves between the items with J and K, ticks with X, opens with O, decides about what is ticked, or where one stands. */
function useQueueKeys(form: React.RefObject<HTMLFormElement | null>): void {
  useEffect(() => {
    const items = () => [...(form.current?.querySelectorAll<HTMLElement>("[data-item]") ?? [])];
    const here = () => items().findIndex((item) => item.contains(document.activeElement));
    const boxOf = (item: HTMLElement | undefined) =>
      item?.querySelector<HTMLInputElement>("input[type=checkbox]");
    const decide = (decision: string) => {
      const boxes = items().flatMap((item) => boxOf(item) ?? []);
      const standing = boxOf(items()[here()]);
      if (!boxes.some(({ checked }) => checked) && standing) standing.checked = true;
      const words = form.current?.elements.namedItem("text");
      if (decision !== "accept" && words instanceof HTMLTextAreaElement && words.value.trim() === "")
        words.focus();
      else form.current?.querySelector<HTMLButtonElement>(`button[value=${decision}]`)?.click();
    };
    const press = (event: KeyboardEvent) => {
      if (isTyping(event)) return;
      const { key } = event;
      const step = key === "j" ? 1 : key === "k" ? -1 : 0;
      const item = items()[here()];
      if (step !== 0) items()[Math.max(0, Math.min(items().length - 1, here() + step))]?.focus();
      else if (key === "x") boxOf(item)?.click();
      else if (key === "o") item?.querySelector("a")?.click();
      else if (decisions[key] !== undefined) decide(decisions[key]);
      else return;
      event.preventDefault();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, [form]);
}

/** What could not be decided, without what could: that stands in the journal, and nobody is to put it right. */
function whatFailed(state: FormState): Pick<ErrorSummaryProps, "state" | "remedy"> {
  const { done, ...errors } = state.errors;
  if (done === undefined) return { state };
  return { state: { ...state, errors }, remedy: `${done.join(" ")} The rest waits as it was.` };
}

/** The queue with its difference, item by item, and the three decisions. */
export function QueueForm({ club, waiting, sideWords, action }: QueueFormProps) {
  const [state, send, pending] = useActionState(action, untouched);
  const form = useRef<HTMLFormElement>(null);
  const head = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state.tries > 0) head.current?.focus();
  }, [state.tries]);
  useQueueKeys(form);
  return (
    <FormKnows value={state}>
      <form ref={form} action={send} noValidate className="grid gap-6">
        <div ref={head} tabIndex={-1} className="outline-none empty:hidden">
          <ErrorSummary {...whatFailed(state)} labels={{}} />
        </div>
        <p className="scriptless:hidden flex flex-wrap gap-x-6 gap-y-2 text-small text-soft pointer-coarse:hidden">
          <span>
            Next <KeyHint of="J" />
          </span>
          <span>
            Back <KeyHint of="K" />
          </span>
          <span>
            Tick <KeyHint of="X" />
          </span>
          <span>
            Open <KeyHint of="O" />
          </span>
        </p>
        <ol className="grid gap-8">
          {waiting.map((one) => (
            <Item key={one.id} club={club} one={one} sideWords={sideWords} />
          ))}
        </ol>
        <section aria-labelledby="decide" className="grid max-w-3xl gap-4">
          <SectionHead id="decide" title="Decide about the ticked ones" />
          <TextArea
            name="text"
            label="Reason, or your question"
            rows={2}
            hint="The owner reads it. Needed to decline and to ask."
          />
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
        </section>
      </form>
    </FormKnows>
  );
}

function Item({
  club,
  one,
  sideWords,
}: Pick<QueueFormProps, "club" | "sideWords"> & { readonly one: QueuedSubmission }) {
  const { id, version, car, what, madeBy, on, status, lines, problems, mixes, evidence, lastSaid } = one;
  const heading = `queued-${id}`;
  return (
    <li data-item tabIndex={-1} aria-labelledby={heading} className="grid gap-2 border-ink border-t-2 pt-3">
      <div className="flex flex-wrap items-center gap-x-5 gap-y-2">
        <label className="inline-flex min-h-11 cursor-pointer items-center gap-3">
          <input
            type="checkbox"
            name="chosen[]"
            value={`${id} ${version} ${car.chassis.replace(/ /g, " ")}`}
            className="size-5 accent-ink"
          />
          <span className="sr-only">
            Choose {car.chassis}: {what}
          </span>
        </label>
        <SmallPlate chassis={car.chassis} href={submissionPath(club, id)} />
        <h2 id={heading} className="text-lead">
          {what}
        </h2>
        <span className="text-small text-soft">
          {madeBy}, {on}, {submissionStatusWords[status].toLowerCase()};{" "}
          {evidence.length === 0
            ? "no photos"
            : evidence.length === 1
              ? "1 photo or document"
              : `${evidence.length} photos and documents`}
        </span>
      </div>
      {status === "answered" && lastSaid !== "" ? (
        <p className="max-w-prose border-line border-l-4 pl-3">{lastSaid}</p>
      ) : null}
      {lines.length === 0 && problems.length === 0 ? (
        <p className="text-soft">Readings only: open it to see them.</p>
      ) : (
        <DifferenceTable
          {...{ lines, sideWords }}
          labelledBy={heading}
          {...photoColumn({ club, id, photos: evidence })}
        />
      )}
      {problems.length === 0 ? null : (
        <ul className="max-w-prose list-disc border-red border-l-4 pl-8 text-small">
          {[...new Set(problems)].map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
      {mixes.length === 0 ? null : (
        <p className="max-w-prose border-red border-l-4 pl-4 text-small">
          <strong>Taken for each other.</strong> {mixes.join(" ")}
        </p>
      )}
      <p className="text-small">
        <a href={submissionPath(club, id)} className="inline-flex min-h-11 items-center">
          Open: what it does, photos, question and answer
        </a>
      </p>
    </li>
  );
}
