import { archiveFile, logFault, requestOf } from "@trunnion/api";
import { download } from "../../../../../features/export/download";
import { fromSegment } from "../../../../../lib/address";
import { service } from "../../../../../lib/service";
import { store } from "../../../../../lib/store";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

const place = "archive.zip";

/** A reader who went away is no fault of ours. */
const gone = (error: unknown) => (error as { code?: string }).code === "ERR_STREAM_PREMATURE_CLOSE";

/** The club's archive as a ZIP file, sent as it is packed. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const club = fromSegment((await params).club);
  const personalData = new URL(request.url).searchParams.get("people") === "yes";
  return download(place, async () => {
    const who = await requestOf(service(), request.headers);
    const failed = (error: unknown) => {
      if (!gone(error)) logFault(error, place);
    };
    return archiveFile(who, { club, personalData, store: await store(), failed });
  });
}
