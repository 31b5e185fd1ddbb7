import type { Metadata } from "next";
import { NewSheetPage } from "../../../../../../../features/setting-sheet/new-sheet-page";
import { readerSideWords } from "../../../../../../../features/setting-sheet/side-words";
import { fromSegment } from "../../../../../../../lib/address";
import { clubPage } from "../../../../../../../lib/club-page";
import { newSettingSheetPath } from "../../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<{ readonly found?: string }>;
}

export const metadata: Metadata = { title: "Write a setting sheet" };

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  const found = (await searchParams).found === "yes";
  return clubPage({
    club,
    at: "register",
    path: newSettingSheetPath(club, car, found ? { found: "yes" } : {}),
    load: async (api) => {
      const form = await api.settingSheet.form({ club, car });
      return { form, words: await readerSideWords(form.club.sideWords) };
    },
    draw: ({ form, words }, face) => <NewSheetPage club={face} form={form} words={words} found={found} />,
  });
}
