import { Frame } from "../components/shell/frame";
import { OutcomePage } from "../components/shell/outcome-page";
import { clubsPath } from "../lib/path";

export default function NotFound() {
  return (
    <Frame>
      <OutcomePage
        title="No such page"
        text={{
          what: "There is nothing at this address.",
          remedy: "Check it for a slip, or start from the beginning. A car or event may have been renamed.",
        }}
        on={{ href: clubsPath, label: "Go to the beginning" }}
      />
    </Frame>
  );
}
