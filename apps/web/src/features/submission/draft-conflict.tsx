"use client";
import { ConflictNotice } from "../../components/form/conflict";
import type { DraftKeeper, SaveState } from "./autosave";

export interface DraftConflictProps {
  readonly conflict: Extract<SaveState, { at: "conflict" }>;
  readonly keeper: DraftKeeper;
}

/** A draft that two phones have open: both sides, and which of them is to stand. */
export function DraftConflict({ conflict, keeper }: DraftConflictProps) {
  return (
    <div className="grid gap-3" role="alert">
      <p className="font-semibold">
        This draft was changed elsewhere, on another phone perhaps. Yours is kept here, and not saved.
      </p>
      <ConflictNotice conflict={conflict} />
      <p className="flex flex-wrap gap-4">
        <button type="button" onClick={() => keeper.keepMine()} className="min-h-11 cursor-pointer underline">
          Save mine over it
        </button>
        <button
          type="button"
          onClick={() => {
            keeper.forget();
            window.location.reload();
          }}
          className="min-h-11 cursor-pointer underline"
        >
          Take the other
        </button>
      </p>
    </div>
  );
}
