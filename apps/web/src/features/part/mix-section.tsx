import type { MixWarning } from "@trunnion/register";
import { SectionHead } from "../../components/page-head";
import { partsPath } from "../../lib/path";

/** What a car's record mixes; nothing where it mixes nothing known. */
export function MixSection({
  club,
  mixes,
}: {
  readonly club: string;
  readonly mixes: readonly MixWarning[];
}) {
  if (mixes.length === 0) return null;
  return (
    <section aria-labelledby="mixes" className="pb-8">
      <SectionHead id="mixes" title="Do not mix">
        <a href={partsPath(club)}>Parts and what they go with</a>
      </SectionHead>
      <ul className="grid gap-2">
        {mixes.map(({ kind, text }) => (
          <li
            key={text}
            className={`max-w-prose border-l-4 py-1 pl-4 ${kind === "mixed" ? "border-red" : "border-line"}`}
          >
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
