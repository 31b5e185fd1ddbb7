"use client";

import { useState } from "react";

/** Copies a text; where scripts do not run it is not shown, and the text beside it can be selected whole. */
export function CopyButton({ text, label }: { readonly text: string; readonly label: string }) {
  const [said, setSaid] = useState("");
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid("Copied");
    } catch {
      // Plain HTTP in the paddock: browsers keep the clipboard to secure addresses.
      setSaid("Select the number and copy it");
    }
  };
  return (
    <span className="scriptless:hidden print:hidden inline-flex items-baseline gap-2 text-small">
      <button
        type="button"
        onClick={copy}
        className="min-h-11 cursor-pointer underline underline-offset-4 sm:min-h-0"
      >
        Copy <span className="sr-only">{label}</span>
      </button>
      <span aria-live="polite" className="text-soft">
        {said}
      </span>
    </span>
  );
}
