import type { Metadata } from "next";
import { SheetPage } from "../../../../../../features/setting-sheet/sheet-page";
import { readerSideWords } from "../../../../../../features/setting-sheet/side-words";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { settingSheetsPath } from "../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<{ readonly sheet?: string; readonly sent?: string }>;
}

export const metadata: Metadata = { title: "What it is set to" };

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  const { sheet, sent } = await searchParams;
  const asked = typeof sheet === "string" ? { sheet } : {};
  const path = settingSheetsPath(club, car, asked);
  return clubPage({
    club,
    at: "register",
    path,
    load: async (api) => {
      const page = await api.settingSheet.page({ club, car, ...asked });
      return { page, words: await readerSideWords(page.club.sideWords) };
    },
    draw: ({ page, words }, face) => (
      <SheetPage club={face} page={page} words={words} here={path} sent={sent === "yes"} />
    ),
  });
}
