import type { PartNoteLine } from "@trunnion/api";
import { partNoteWords } from "@trunnion/register";
import { Button } from "../../components/button";
import { SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { sayLongDay } from "../../lib/day";
import { carPath } from "../../lib/path";
import { withdrawNote } from "./action";

export interface NoteSectionProps {
  readonly club: string;
  readonly part: string;
  readonly notes: readonly PartNoteLine[];
}

/** What members noted, the latest first. */
export function NoteSection({ club, part, notes }: NoteSectionProps) {
  return (
    <section aria-labelledby="notes" className="pt-8">
      <SectionHead id="notes" title="Found, sought, tried" />
      {notes.length === 0 ? <p>Nobody has noted anything yet.</p> : null}
      <ol>
        {notes.map((note) => (
          <li
            key={note.id}
            className="grid items-baseline gap-x-8 gap-y-1 border-hair border-b py-2 wide:grid-cols-[11rem_1fr_auto]"
          >
            <span>{sayLongDay(note.on)}</span>
            <div>
              <p>
                <strong className="font-semibold">{partNoteWords[note.kind]}</strong>
                {note.count === undefined ? "" : `, ${note.count} of them`}
                {note.by === "" ? "" : <span className="text-soft">, {note.by}</span>}
              </p>
              {note.text === "" ? null : <p className="whitespace-pre-line">{note.text}</p>}
              {note.car === undefined ? null : (
                <p className="pt-1">
                  <SmallPlate chassis={note.car.chassis} href={carPath(club, note.car.reference)} />
                </p>
              )}
            </div>
            {note.mayWithdraw ? (
              <form action={withdrawNote.bind(null, club, part, note.id)}>
                <Button>
                  Take back<span className="sr-only"> the note of {sayLongDay(note.on)}</span>
                </Button>
              </form>
            ) : null}
          </li>
        ))}
      </ol>
    </section>
  );
}
