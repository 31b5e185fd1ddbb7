import { LinkButton } from "../../components/button";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { registerPath } from "../../lib/path";

/** Evidence asked for without saying of what: how one comes to it. */
export function NothingAskedPage({ club }: { readonly club: ClubFace }) {
  return (
    <>
      <PageHead title="Photos and documents" lead="They are kept with the car they are of." />
      <p className="max-w-prose pb-6">
        Open a car and follow “Photos and documents” there, or the mark beside the value whose support you
        look for.
      </p>
      <LinkButton href={registerPath(club.slug)}>Find the car</LinkButton>
    </>
  );
}
