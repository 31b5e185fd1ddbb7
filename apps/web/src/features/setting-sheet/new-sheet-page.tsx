import { randomUUID } from "node:crypto";
import type { SettingSheetForm } from "@trunnion/api";
import { Caution } from "../../components/caution";
import { PageHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { cautions } from "../../lib/caution";
import { newSettingSheetPath, settingSheetsPath } from "../../lib/path";
import { sendSheet } from "./sheet-action";
import { SheetForm } from "./sheet-form";
import { SideChoice } from "./side-choice";
import type { SideWords } from "./side-words";

export interface NewSheetPageProps {
  readonly club: ClubFace;
  readonly form: SettingSheetForm;
  readonly words: SideWords;
  readonly found: boolean;
}

/** The form of a new setting sheet. */
export function NewSheetPage({ club, form, words, found }: NewSheetPageProps) {
  const { reference } = form.car;
  const here = newSettingSheetPath(club.slug, reference, found ? { found: "yes" } : {});
  return (
    <>
      <PageHead
        title="Write a setting sheet"
        back={{ href: settingSheetsPath(club.slug, reference), label: "What it is set to" }}
        plate={<Plate chassis={form.car.chassis} />}
      />
      <div className="flex flex-wrap gap-x-6 pb-4">
        <a
          className="inline-flex min-h-11 items-center text-small"
          href={newSettingSheetPath(club.slug, reference, found ? {} : { found: "yes" })}
        >
          {found ? "Only what it was left at" : "With what was found before anything was moved"}
        </a>
        <SideChoice words={words} here={here} />
      </div>
      <div className="grid gap-10">
        <SheetForm
          form={form}
          words={words}
          found={found}
          action={sendSheet.bind(null, club.slug, reference)}
          keys={{ client: randomUUID(), step: randomUUID() }}
          back={settingSheetsPath(club.slug, reference)}
        />
        <Caution cautions={cautions.setting} />
      </div>
    </>
  );
}
