"use client";
import { useEffect, useRef, useState } from "react";
import { broughtTo, type Typed, typedOver, writeInto } from "./typed";

const placeOf = (name: string) => `trunnion.form.${name}`;

function readKept(name: string): Typed {
  try {
    return JSON.parse(window.localStorage.getItem(placeOf(name)) ?? "{}") as Typed;
  } catch {
    return {};
  }
}

function writeKept(name: string, typed: Typed): void {
  try {
    if (Object.keys(typed).length === 0) window.localStorage.removeItem(placeOf(name));
    else window.localStorage.setItem(placeOf(name), JSON.stringify(typed));
  } catch {
    // A browser that keeps nothing leaves the form as it is.
  }
}

export interface KeptFormProps {
  /** Names what is being written: one form of a name at a time. */
  readonly name: string;
}

/**
 * Inside a form: keeps what is typed in this browser, so that a closed tab or a dead battery loses nothing, and puts it
 * back when the form is opened again. `ForgetForm` on the page that comes after it was sent lets go of it.
 */
export function KeptForm({ name }: KeptFormProps) {
  const here = useRef<HTMLDivElement>(null);
  const [restored, setRestored] = useState(0);
  useEffect(() => {
    const form = here.current?.closest("form");
    if (!form) return;
    const opened = broughtTo(form);
    // Typed before this script came: newer than what was kept.
    const early = typedOver(form, opened);
    setRestored(writeInto(form, { ...readKept(name), ...early }));
    const keep = () => writeKept(name, typedOver(form, opened));
    keep();
    form.addEventListener("input", keep);
    return () => form.removeEventListener("input", keep);
  }, [name]);
  const afresh = () => {
    writeKept(name, {});
    // Browsers fill a page that is loaded again with what stood in its fields.
    here.current?.closest("form")?.reset();
    window.location.reload();
  };
  return (
    <div ref={here} role="status" className="empty:hidden">
      {restored === 0 ? null : (
        <p className="max-w-prose border-line border-l-4 py-1 pl-4">
          What you had begun here is back: {restored === 1 ? "one entry" : `${restored} entries`}.{" "}
          <button type="button" onClick={afresh} className="min-h-11 cursor-pointer underline">
            Begin afresh
          </button>
        </p>
      )}
    </div>
  );
}

/** Lets go of what a form kept, once it was sent. */
export function ForgetForm({ name }: KeptFormProps) {
  useEffect(() => writeKept(name, {}), [name]);
  return null;
}
