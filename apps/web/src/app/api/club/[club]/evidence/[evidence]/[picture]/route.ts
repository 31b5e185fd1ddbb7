import { smallPicture } from "@trunnion/api";
import { answerFile, forEver, inert } from "../../../../../../../features/evidence/answer";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly evidence: string; readonly picture: string }>;
}

/** A small picture of a piece of evidence: `320-0.webp`. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, evidence, picture } = await params;
  return answerFile(request, club, async (asked) => {
    const { bytes } = await smallPicture(asked, evidence, picture);
    const headers = { ...inert, "content-type": "image/webp", "cache-control": forEver };
    return new Response(new Uint8Array(bytes), { headers });
  });
}
