// For the tests: opens the server of a data folder, says so, and waits to be killed.
import { openEmbedded } from "./embedded";

const dataFolder = process.argv[2] ?? "";
openEmbedded({ dataFolder }).then(
  ({ ownerUrl, strategy, reused }) => {
    process.stdout.write(`${JSON.stringify({ ownerUrl, strategy, reused })}\n`);
    setInterval(() => undefined, 60_000);
  },
  (error: unknown) => {
    process.stderr.write(`${error}\n`);
    process.exit(1);
  },
);
