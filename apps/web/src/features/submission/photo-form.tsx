"use client";
import { evidenceTargetReference } from "@trunnion/register";
import type { FormEvent } from "react";
import { evidenceFormPath, submissionPath } from "../../lib/path";
import { PHOTO_FORM } from "./photo-section";

/** What the fields for photos belong to: sends them where no script runs, and does nothing where one does. */
export function PhotoForm({ club, id }: { readonly club: string; readonly id: string }) {
  return (
    <form
      id={PHOTO_FORM}
      action={evidenceFormPath(club)}
      method="post"
      encType="multipart/form-data"
      onSubmit={(event: FormEvent) => event.preventDefault()}
    >
      <input type="hidden" name="for" value={evidenceTargetReference({ kind: "submission", id })} />
      <input type="hidden" name="back" value={`${submissionPath(club, id)}#photos`} />
    </form>
  );
}
