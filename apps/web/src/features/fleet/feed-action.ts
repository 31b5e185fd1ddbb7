"use server";
import { revalidatePath } from "next/cache";
import { takeForm } from "../../lib/form";
import type { FormState } from "../../lib/form-state";
import { calendarFilePath, feedsPath } from "../../lib/path";
import { ownOrigin } from "../../lib/public-page";
import { api } from "../../lib/service";

/** Makes a private link and says it, this once. */
export async function makeFeed(club: string, before: FormState, data: FormData): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: feedsPath(club),
    work: async () => {
      const series = String(data.get("series") ?? "");
      const label = String(data.get("label") ?? "");
      const token = await (await api()).fleet.addFeed({ club, label, ...(series === "" ? {} : { series }) });
      const address = `${await ownOrigin()}${calendarFilePath(token)}`;
      revalidatePath(feedsPath(club));
      return { done: `This is the link; it is not shown again: ${address}` };
    },
  });
}

/** Takes one of one's own links back. */
export async function takeFeedBack(
  club: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: feedsPath(club),
    work: async () => {
      await (await api()).fleet.removeFeed({ club, id });
      revalidatePath(feedsPath(club));
      return { to: feedsPath(club, { takenBack: "yes" }) };
    },
  });
}
