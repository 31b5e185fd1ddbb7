import { lookAtSheetForm, refusalOf } from "@trunnion/api";
import type { Metadata } from "next";
import { dropNamed, goneText } from "../../../../../../../features/sheet-form/drop";
import { LookPage } from "../../../../../../../features/sheet-form/look-page";
import { clubPage } from "../../../../../../../lib/club-page";
import { sheetFormLookPath } from "../../../../../../../lib/path";
import { pageRequest } from "../../../../../../../lib/service";

export const metadata: Metadata = { title: "Filled-in sheets" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string; readonly drop: string }>;
  readonly searchParams: Promise<{ readonly taken?: string }>;
}

async function looked(club: string, event: string, name: string) {
  const request = await pageRequest();
  const drop = await dropNamed(name, { person: request.signedIn?.personId ?? "", club, event });
  if (drop === undefined) return { file: "", looks: [], refusal: goneText };
  const { form, refusal } = drop;
  if (form === undefined) return { file: "", looks: [], refusal: refusal ?? goneText };
  try {
    return { file: form.file, looks: await lookAtSheetForm(request, { club, event }, form) };
  } catch (error) {
    const told = refusalOf(error);
    if (!told) throw error;
    return { file: form.file, looks: [], refusal: told.text };
  }
}

export default async function Page({ params, searchParams }: Segments) {
  const { club, event, drop } = await params;
  const taken = Number((await searchParams).taken);
  return clubPage({
    club,
    at: "event",
    path: sheetFormLookPath(club, event, drop),
    load: async (api) => ({
      event: (await api.event.page({ club, event })).event,
      ...(await looked(club, event, drop)),
    }),
    draw: ({ event: { slug, name }, ...told }) => (
      <LookPage
        club={club}
        event={{ slug, name }}
        drop={drop}
        {...told}
        {...(Number.isInteger(taken) && taken > 0 ? { taken } : {})}
      />
    ),
  });
}
