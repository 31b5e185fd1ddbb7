import { createCaller, requestOf } from "@trunnion/api";
import { fileAnswer } from "../../../../../../../lib/file-answer";
import { service } from "../../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly keeper: string }>;
}

/** Everything the register holds of a keeper, for that person. Personal data: to be kept by nobody on the way. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, keeper } = await params;
  return fileAnswer({
    type: "application/json; charset=utf-8",
    name: "personal-data.json",
    inline: false,
    place: "data.json",
    make: async () => {
      const who = await requestOf(service(), request.headers);
      const held = await createCaller(who).keeper.export({ club, keeper });
      return new TextEncoder().encode(`${JSON.stringify(held, null, 2)}\n`);
    },
  });
}
