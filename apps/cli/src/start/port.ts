import { createServer } from "node:net";
import { StartFault } from "./fault";

/** How many ports above the one asked for are tried. */
const TRIES = 50;
const DEFAULT_PORT = 3000;

/** The port, if the loopback interface has it free; for 0, any. */
function bind(port: number): Promise<number | undefined> {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", () => resolve(undefined));
    server.listen({ port, host: "127.0.0.1" }, () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" ? address?.port : undefined));
    });
  });
}

/**
 * Reads `PORT`; 3000 when not set, 0 for any.
 *
 * @throws StartFault when it is no port
 */
export function readPort(given: string | undefined): number {
  if (given === undefined) return DEFAULT_PORT;
  if (/^\d{1,5}$/.test(given) && Number(given) <= 65_535) return Number(given);
  throw new StartFault(
    `PORT is "${given}"; a whole number from 0 to 65535 was expected (0 takes any free one)`,
  );
}

/**
 * The port to serve on: the one asked for, or the next that is free, saying so.
 *
 * @throws StartFault when too many in a row are taken
 */
export async function choosePort(first: number, log: (line: string) => void): Promise<number> {
  for (let port = first; port <= Math.min(first + TRIES, 65_535); port++) {
    const free = await bind(port);
    if (free === undefined) continue;
    if (first !== 0 && port !== first) log(`Port ${first} is taken: using ${port}.`);
    return free;
  }
  throw new StartFault(
    `the ports from ${first} to ${first + TRIES} are taken or forbidden; set PORT to another`,
  );
}
