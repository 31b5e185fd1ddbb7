import type { Metadata } from "next";
import { PartFormPage } from "../../../../../../features/part/part-form";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { changePartPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "Change the part" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly part: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, part: segment } = await params;
  const part = fromSegment(segment);
  return clubPage({
    club,
    at: "desk",
    path: changePartPath(club, part),
    load: (api) => api.part.form({ club, part }),
    draw: (form, face) => <PartFormPage club={face} form={form} />,
  });
}
