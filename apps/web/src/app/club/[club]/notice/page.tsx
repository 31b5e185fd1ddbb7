import type { Metadata } from "next";
import { NoticesPage } from "../../../../features/submission/notices-page";
import { clubPage } from "../../../../lib/club-page";
import { noticesPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Messages" };

export default async function Page({ params }: { readonly params: Promise<{ readonly club: string }> }) {
  const { club } = await params;
  return clubPage({
    club,
    at: "desk",
    path: noticesPath(club),
    load: (api) => api.submission.notices({ club }),
    draw: (notices) => <NoticesPage club={club} notices={notices} />,
  });
}
