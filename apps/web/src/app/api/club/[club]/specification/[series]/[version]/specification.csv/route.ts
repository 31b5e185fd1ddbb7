import { createCaller, requestOf } from "@trunnion/api";
import { isUnreadable, withoutControls } from "../../../../../../../../lib/address";
import { answeredPlainly, fileHeaders, told } from "../../../../../../../../lib/file-answer";
import { service } from "../../../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly series: string; readonly version: string }>;
}

const noVersion = { what: "There is no such version.", remedy: "Take the link from the specification's page." };

/** One version of a specification as a table that can be read in again. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, series, version } = await params;
  return answeredPlainly("specification.csv", async () => {
    const caller = createCaller(await requestOf(service(), request.headers));
    const asked = {
      club: withoutControls(club),
      series: withoutControls(series),
      version: Number(version),
    };
    try {
      const { file, text } = await caller.specification.csv(asked);
      return new Response(text, { headers: fileHeaders("text/csv; charset=utf-8", file) });
    } catch (error) {
      if (isUnreadable(error)) return told(noVersion, 404);
      throw error;
    }
  });
}
