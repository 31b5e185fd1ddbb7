import { redirect } from "next/navigation";
import { Frame } from "../components/shell/frame";
import { ClubChoice } from "../features/home/club-choice";
import { requireSignedIn } from "../lib/club-page";
import { clubPath, clubsPath } from "../lib/path";
import { api } from "../lib/service";

/** The beginning: straight into one's club, or the choice between several. */
export default async function Page() {
  await requireSignedIn(clubsPath);
  const { clubs } = await (await api()).club.mine();
  const [only, ...others] = clubs;
  if (only && others.length === 0) redirect(clubPath(only.slug));
  return (
    <Frame>
      <ClubChoice clubs={clubs} />
    </Frame>
  );
}
