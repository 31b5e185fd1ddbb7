"use client";
import { registerFileBytes } from "@trunnion/register";
import { type ReactNode, useRef, useState } from "react";
import { useDrop } from "../evidence/use-drop";

/**
 * A form that takes one file, from the picker or dropped anywhere on the page. A file that would be refused for its size
 * is told before it is sent. Without a script it is a plain form.
 */
export function DropZone({ action, children }: { readonly action: string; readonly children: ReactNode }) {
  const form = useRef<HTMLFormElement>(null);
  const [tooLarge, setTooLarge] = useState<string>();
  const over = useDrop((files) => {
    const input = form.current?.querySelector<HTMLInputElement>("input[type=file]");
    const [first] = files;
    if (!input || !first) return;
    // One table is read in at a time: of several the first is taken, and shown in the field.
    const taken = new DataTransfer();
    taken.items.add(first);
    input.files = taken.files;
    form.current?.requestSubmit();
  });
  return (
    <form
      ref={form}
      action={action}
      method="post"
      encType="multipart/form-data"
      data-over={over}
      className="drop-zone grid max-w-3xl gap-5"
      onSubmit={(event) => {
        const [file] = event.currentTarget.querySelector<HTMLInputElement>("input[type=file]")?.files ?? [];
        if (!file || file.size <= registerFileBytes) return;
        event.preventDefault();
        setTooLarge(
          `${file.name} is ${(file.size / 1e6).toFixed(1)} MB; at most ${registerFileBytes / 1e6} MB is read.`,
        );
      }}
    >
      {tooLarge === undefined ? null : (
        <p role="alert" className="max-w-prose border-red border-l-4 py-1 pl-4 font-semibold">
          {tooLarge}
        </p>
      )}
      {children}
    </form>
  );
}
