import type { SheetFace } from "@trunnion/api";
import { PageHead, SectionHead } from "../../components/page-head";
import { sayLongDay } from "../../lib/day";
import { clubsPath } from "../../lib/path";
import { sayChange } from "./look-page";

const standingWords: Readonly<
  Record<SheetFace["standing"], { readonly title: string; readonly text: string }>
> = {
  asPrinted: { title: "As printed", text: "The record says today what this sheet says." },
  changed: {
    title: "Changed since printing",
    text: "The record says something else today. Print the sheet anew before you rely on it.",
  },
  notComparable: {
    title: "Cannot be compared",
    text: "The entry was withdrawn, or the sheet was printed by an earlier version. Print it anew.",
  },
};

/** Whether the record moved on since a sheet was printed; what, for members of its club. */
export function SheetFacePage({ face }: { readonly face: SheetFace }) {
  const { code, club, event, number, printedAt, standing, changes } = face;
  const { title, text } = standingWords[standing];
  const printed = `${sayLongDay(printedAt.slice(0, 10))}, ${printedAt.slice(11, 16)} UTC`;
  return (
    <>
      <PageHead
        title={title}
        lead={
          <p>
            No. {number}, {event}, {club}
          </p>
        }
      />
      <p className="max-w-prose pb-4">{text}</p>
      <p className="pb-4 text-small text-soft">
        Sheet {code}, printed {printed}
      </p>
      {changes === undefined ? (
        standing === "changed" ? (
          <p>Members of the club see what changed when they are signed in.</p>
        ) : null
      ) : changes.length === 0 ? null : (
        <section aria-labelledby="changes">
          <SectionHead id="changes" title="What changed" />
          <ul className="grid gap-1">
            {changes.map((change) => (
              <li key={change.what}>{sayChange(change)}</li>
            ))}
          </ul>
        </section>
      )}
      <p className="pt-4">
        <a href={clubsPath}>{changes === undefined ? "Sign in" : "Go to your clubs"}</a>
      </p>
    </>
  );
}
