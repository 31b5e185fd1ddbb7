"use server";
import type { RouterInputs } from "@trunnion/api";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { newMarquePath, newSeriesPath, seriesFormPath, specificationPath } from "../../lib/path";
import { api } from "../../lib/service";

type Inputs = RouterInputs["series"];

/** Takes the form of a new marque; then on to its first series. */
export async function addMarque(club: string, before: FormState, data: FormData): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: newMarquePath(club),
    work: async () => {
      await (await api()).series.addMarque({ ...enteredOf<Omit<Inputs["addMarque"], "club">>(data), club });
      return { to: newSeriesPath(club) };
    },
  });
}

/** Takes the form of a new series. */
export async function addSeries(club: string, before: FormState, data: FormData): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: newSeriesPath(club),
    work: async () => {
      const series = await (await api()).series.add({
        ...enteredOf<Omit<Inputs["add"], "club">>(data),
        club,
      });
      return { to: specificationPath(club, series) };
    },
  });
}

/** Takes the form of a series there is. */
export async function changeSeries(
  club: string,
  series: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: seriesFormPath(club, series),
    work: async () => {
      const entered = enteredOf<Omit<Inputs["change"], "club" | "series">>(data);
      await (await api()).series.change({ ...entered, club, series });
      return { to: specificationPath(club, series) };
    },
  });
}
