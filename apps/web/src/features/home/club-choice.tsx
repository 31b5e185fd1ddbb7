import { PageHead } from "../../components/page-head";
import { type ClubFace, sayRoles } from "../../components/shell/shell";
import { clubPath } from "../../lib/path";

export interface ClubChoiceProps {
  readonly clubs: readonly (ClubFace & { readonly roles: readonly string[] })[];
}

/** For who belongs to several clubs, or to none. */
export function ClubChoice({ clubs }: ClubChoiceProps) {
  return (
    <>
      <PageHead title={clubs.length === 0 ? "You belong to no club" : "Your clubs"} />
      {clubs.length === 0 ? (
        <p className="max-w-prose">Ask a club's registrar for an invitation. The link in it brings you in.</p>
      ) : null}
      <ul className="max-w-prose">
        {clubs.map(({ slug, name, roles }) => (
          <li key={slug} className="border-hair border-b">
            <a href={clubPath(slug)} className="flex min-h-14 items-center text-lead">
              {name}
            </a>
            <p className="pb-2 text-small text-soft">As {sayRoles(roles)}</p>
          </li>
        ))}
      </ul>
    </>
  );
}
