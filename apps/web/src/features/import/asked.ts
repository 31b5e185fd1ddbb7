import "server-only";
import { type ImportRequest, requestOf } from "@trunnion/api";
import { storeSurroundings } from "../../env";
import { pageRequest, service } from "../../lib/service";

/** What everything about imports needs, for a file or a form that is sent to an address. */
export async function importRequest(request: Request, club: string): Promise<ImportRequest> {
  const { dataFolder: folder } = storeSurroundings();
  return { request: await requestOf(service(), request.headers), folder, club };
}

/** The same for a server action. */
export async function importAction(club: string): Promise<ImportRequest> {
  const { dataFolder: folder } = storeSurroundings();
  return { request: await pageRequest(), folder, club };
}
