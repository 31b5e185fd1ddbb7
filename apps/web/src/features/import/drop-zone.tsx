"use client";
import { registerFileBytes } from "@trunnion/register";
import { type ReactNode, useEffect, useRef, useState } from "react";

const carriesFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;

/**
 * A form that takes one file, from the picker or dropped anywhere on the page. A file that would be refused for its size
 * is told before it is sent. Without a script it is a plain form.
 */
export function DropZone({ action, children }: { readonly action: string; readonly children: ReactNode }) {
  const form = useRef<HTMLFormElement>(null);
  const [over, setOver] = useState(false);
  const [tooLarge, setTooLarge] = useState<string>();
  useEffect(() => {
    const hold = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      const files = event.dataTransfer?.files;
      if (!carriesFiles(event) || !files) return;
      event.preventDefault();
      setOver(false);
      const input = form.current?.querySelector<HTMLInputElement>("input[type=file]");
      if (!input) return;
      input.files = files;
      form.current?.requestSubmit();
    };
    document.addEventListener("dragover", hold);
    document.addEventListener("dragleave", leave);
    document.addEventListener("drop", drop);
    return () => {
      document.removeEventListener("dragover", hold);
      document.removeEventListener("dragleave", leave);
      document.removeEventListener("drop", drop);
    };
  }, []);
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
