import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { toolsFor } from "./tool";

export interface DeskPageProps {
  readonly club: ClubFace;
  readonly roles: readonly string[];
}

/** What there is to work with, for the roles one has here. */
export function DeskPage({ club, roles }: DeskPageProps) {
  return (
    <>
      <PageHead title="Desk" lead={club.name} />
      <ul className="max-w-3xl border-ink border-t-2">
        {toolsFor(club.slug, roles).map(({ href, title, text }) => (
          <li key={href} className="border-hair border-b py-3">
            <h2 className="text-lead">
              <a href={href}>{title}</a>
            </h2>
            <p className="max-w-prose text-soft">{text}</p>
          </li>
        ))}
      </ul>
    </>
  );
}
