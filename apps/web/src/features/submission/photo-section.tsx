"use client";
import type { CharacteristicBook, SubmissionContent } from "@trunnion/register";
import { evidenceLimits, submissionLimits } from "@trunnion/register";
import { type ReactNode, useEffect, useId, useRef } from "react";
import { Button } from "../../components/button";
import { SectionHead } from "../../components/page-head";
import { evidencePath } from "../../lib/path";
import { ACCEPT } from "../evidence/accept";
import { useDrop } from "../evidence/use-drop";
import { type ShownPhoto, sayPhotoState, sayWaiting } from "./photo-list";
import type { Photos } from "./use-photos";

/** Id of the form that photos are sent by where no script runs. */
export const PHOTO_FORM = "photo-form";

export interface PhotoSectionProps {
  readonly club: string;
  readonly photos: Photos;
  readonly content: SubmissionContent;
  readonly book: CharacteristicBook;
}

interface Choice {
  readonly value: string;
  readonly label: string;
}

/** What a photo can be said to show: each part that is changed, or all of it. */
function choicesOf({ modifications }: SubmissionContent, book: CharacteristicBook): readonly Choice[] {
  const keys = modifications.flatMap(({ changes }) => changes.map(({ characteristic }) => characteristic));
  return [
    { value: "", label: "All that was changed" },
    ...[...new Set(keys)].map((key) => ({ value: key, label: book.find(key)?.label ?? key })),
  ];
}

function AboutField({
  name,
  value,
  choices,
  children,
  choose,
  form,
}: {
  readonly name?: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly children: ReactNode;
  readonly choose?: (about: string) => void;
  readonly form?: string;
}) {
  const id = useId();
  const known = choices.some((choice) => choice.value === value)
    ? choices
    : [...choices, { value, label: value }];
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="font-semibold">
        {children}
      </label>
      <select
        id={id}
        {...(name === undefined ? {} : { name })}
        {...(form === undefined ? {} : { form })}
        {...(choose === undefined
          ? { defaultValue: value }
          : { value, onChange: (event) => choose(event.currentTarget.value) })}
        className="field"
      >
        {known.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </div>
  );
}

function PhotoItem({
  club,
  photo,
  place,
  choices,
  photos,
}: {
  readonly club: string;
  readonly photo: ShownPhoto;
  readonly place: number;
  readonly choices: readonly Choice[];
  readonly photos: Photos;
}) {
  const { picture, name, about, state } = photo;
  const alt = `Photo ${place + 1}: ${name}`;
  const shown = picture ? (
    // biome-ignore lint/performance/noImgElement: a picture of this device, or made small by the service already
    <img src={picture} alt={alt} className="h-28 w-40 border border-line object-cover" />
  ) : (
    <span className="grid h-28 w-40 place-content-center break-all border border-line p-2 text-fine">
      {name}
    </span>
  );
  return (
    <li className="grid content-start gap-2 border-hair border-b pb-4 sm:grid-cols-[10rem_1fr] sm:gap-x-5">
      {state.at === "sent" ? <a href={evidencePath(club, state.evidence)}>{shown}</a> : shown}
      <div className="grid min-w-0 content-start gap-2">
        <AboutField value={about} choices={choices} choose={(shows) => void photos.about(photo, shows)}>
          Shows<span className="sr-only">: photo {place + 1}</span>
        </AboutField>
        <p className={`text-small ${state.at === "refused" ? "border-red border-l-4 pl-2" : "text-soft"}`}>
          {sayPhotoState(state)}
        </p>
        {state.at === "sending" ? null : (
          <div>
            <Button type="button" onClick={() => void photos.remove(photo)}>
              Remove<span className="sr-only"> photo {place + 1}</span>
            </Button>
          </div>
        )}
      </div>
    </li>
  );
}

/**
 * Photos of a change: taken or chosen, kept on this device at once and sent when there is a signal, each with what it
 * shows. Without a script its fields belong to a form of their own.
 */
export function PhotoSection({ club, photos, content, book }: PhotoSectionProps) {
  const here = useRef<HTMLElement>(null);
  const choices = choicesOf(content, book);
  const first = choices.length === 2 ? (choices[1]?.value ?? "") : "";
  const take = (input: HTMLInputElement) => {
    const files = [...(input.files ?? [])];
    input.value = "";
    if (files.length > 0) void photos.add(files, first);
  };
  const over = useDrop((files) => void photos.add(files, first));
  // biome-ignore lint/correctness/useExhaustiveDependencies: once: what was chosen before this script had come
  useEffect(() => {
    for (const input of here.current?.querySelectorAll<HTMLInputElement>("input[type=file]") ?? [])
      take(input);
  }, []);
  const field = { type: "file", name: "file", form: PHOTO_FORM, className: "field" } as const;
  return (
    <section ref={here} aria-labelledby="photos" data-over={over} className="drop-zone grid max-w-3xl gap-4">
      <SectionHead id="photos" title="Photos" />
      <div className="grid gap-5 sm:grid-cols-2">
        <div className="hidden gap-1 pointer-coarse:grid">
          <label htmlFor="photo-camera" className="font-semibold">
            Take a photo
          </label>
          <input
            {...field}
            id="photo-camera"
            accept="image/jpeg"
            capture="environment"
            onChange={(event) => take(event.currentTarget)}
          />
        </div>
        <div className="grid gap-1">
          <label htmlFor="photo-files" className="font-semibold">
            Choose photos or documents
          </label>
          <input
            {...field}
            id="photo-files"
            multiple
            accept={ACCEPT}
            aria-describedby="photo-hint"
            onChange={(event) => take(event.currentTarget)}
          />
        </div>
      </div>
      <p id="photo-hint" className="max-w-prose text-fine text-soft">
        At most {submissionLimits.photos} to a change, each up to {evidenceLimits.fileBytes / 1e6} MB; place,
        camera and names are taken out of pictures.{" "}
        <span className="scriptless:hidden">They can be dropped on this page.</span>
      </p>
      <div className="hidden gap-3 scriptless:grid">
        <AboutField name="about" value={first} choices={choices} form={PHOTO_FORM}>
          What they show
        </AboutField>
        <p className="text-small">Press Save below first: adding photos opens this page anew.</p>
        <div>
          <Button form={PHOTO_FORM}>Add the photos</Button>
        </div>
      </div>
      <ul aria-label="Photos of this change" className="grid gap-4 empty:hidden">
        {photos.photos.map((photo, place) => (
          <PhotoItem key={photo.key} {...{ club, photo, place, choices, photos }} />
        ))}
      </ul>
      <p role="status" className="font-semibold empty:hidden">
        {sayWaiting(photos.photos)}
      </p>
      <ul role="alert" className="grid gap-1 empty:hidden">
        {photos.told.map((text) => (
          <li key={text} className="border-red border-l-4 pl-3">
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
