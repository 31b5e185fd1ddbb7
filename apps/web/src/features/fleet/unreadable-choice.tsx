import { OutcomePage } from "../../components/shell/outcome-page";
import type { ClubFace } from "../../components/shell/shell";
import { fleetPath } from "../../lib/path";

/** What stands in a page's place when its address asks for a condition that cannot be read: never every car instead. */
export function UnreadableChoice({ club, problem }: { readonly club: ClubFace; readonly problem: string }) {
  return (
    <OutcomePage
      title="Which cars?"
      text={{
        what: `The condition in this address cannot be read: ${problem}.`,
        remedy: "Put it together again, or follow the link again from where it was sent.",
      }}
      on={{ href: fleetPath(club.slug), label: "Go to the fleet" }}
    />
  );
}
