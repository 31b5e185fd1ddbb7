import type { Metadata } from "next";
import { PartFormPage } from "../../../../features/part/part-form";
import { clubPage } from "../../../../lib/club-page";
import { newPartPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Add a part" };

export default async function Page({ params }: { readonly params: Promise<{ readonly club: string }> }) {
  const { club } = await params;
  return clubPage({
    club,
    at: "desk",
    path: newPartPath(club),
    load: (api) => api.part.form({ club }),
    draw: (form, face) => <PartFormPage club={face} form={form} />,
  });
}
