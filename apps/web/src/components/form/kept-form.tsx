"use client";
import { useEffect, useRef, useState } from "react";

const placeOf = (name: string) => `trunnion.form.${name}`;

type Typed = Readonly<Record<string, string>>;

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

type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

/** What people fill in: no hidden fields, which are made anew with each page, and no files, which cannot be kept so. */
function controlsOf(form: HTMLFormElement): readonly Control[] {
  return [...form.elements].filter(
    (one): one is Control =>
      (one instanceof HTMLInputElement && !["hidden", "file", "submit", "checkbox"].includes(one.type)) ||
      one instanceof HTMLSelectElement ||
      one instanceof HTMLTextAreaElement,
  );
}

const valuesOf = (form: HTMLFormElement): Typed =>
  Object.fromEntries(controlsOf(form).map(({ name, value }) => [name, value]));

/** What differs from how the form was opened: what was typed, however often it was sent and refused meanwhile. */
const typedIn = (form: HTMLFormElement, opened: Typed): Typed =>
  Object.fromEntries(Object.entries(valuesOf(form)).filter(([name, value]) => opened[name] !== value));

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
    const [kept, opened] = [readKept(name), valuesOf(form)];
    const back = controlsOf(form).filter((one) => {
      const value = kept[one.name];
      if (value === undefined || value === one.value) return false;
      one.value = value;
      one.closest("details")?.setAttribute("open", "");
      one.dispatchEvent(new Event("input", { bubbles: true }));
      return true;
    });
    setRestored(back.length);
    const keep = () => writeKept(name, typedIn(form, opened));
    form.addEventListener("input", keep);
    return () => form.removeEventListener("input", keep);
  }, [name]);
  const afresh = () => {
    writeKept(name, {});
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
