import {
  addCar,
  addCarInput,
  addIdentity,
  addIdentityInput,
  addNote,
  addNoteInput,
  addStatus,
  addStatusInput,
  carForm,
  characteristicChoice,
  correctIdentity,
  correctIdentityInput,
  correctNote,
  correctNoteInput,
  correctStatus,
  correctStatusInput,
  fileCar,
  fileCarInput,
  findCharacteristics,
  listSeriesDetails,
  listSources,
  mergeCars,
  mergeCarsInput,
  previewMerge,
  removeIdentity,
  removeIdentityInput,
  removeNote,
  removeNoteInput,
  removeStatus,
  removeStatusInput,
  setAsBuilt,
  setAsBuiltInput,
  setOptions,
  setOptionsInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const carRef = z.object({ car: line(60).min(1) });

/** A car's record, row by row: what forms show, and every change of it. */
export const recordRouter = router({
  form: member.input(carRef).query(({ ctx, input }) => carForm(ctx.scope, input.car)),
  choices: member.query(async ({ ctx }) => ({
    series: await listSeriesDetails(ctx.scope),
    sources: await listSources(ctx.scope),
  })),
  add: member.input(addCarInput).mutation(({ ctx, input }) => addCar(ctx.scope, input)),
  file: member.input(fileCarInput).mutation(({ ctx, input }) => fileCar(ctx.scope, input)),
  setOptions: member.input(setOptionsInput).mutation(({ ctx, input }) => setOptions(ctx.scope, input)),
  addIdentity: member.input(addIdentityInput).mutation(({ ctx, input }) => addIdentity(ctx.scope, input)),
  correctIdentity: member
    .input(correctIdentityInput)
    .mutation(({ ctx, input }) => correctIdentity(ctx.scope, input)),
  removeIdentity: member
    .input(removeIdentityInput)
    .mutation(({ ctx, input }) => removeIdentity(ctx.scope, input)),
  addStatus: member.input(addStatusInput).mutation(({ ctx, input }) => addStatus(ctx.scope, input)),
  correctStatus: member
    .input(correctStatusInput)
    .mutation(({ ctx, input }) => correctStatus(ctx.scope, input)),
  removeStatus: member.input(removeStatusInput).mutation(({ ctx, input }) => removeStatus(ctx.scope, input)),
  addNote: member.input(addNoteInput).mutation(({ ctx, input }) => addNote(ctx.scope, input)),
  correctNote: member.input(correctNoteInput).mutation(({ ctx, input }) => correctNote(ctx.scope, input)),
  removeNote: member.input(removeNoteInput).mutation(({ ctx, input }) => removeNote(ctx.scope, input)),
  setAsBuilt: member.input(setAsBuiltInput).mutation(({ ctx, input }) => setAsBuilt(ctx.scope, input)),
  findCharacteristics: member
    .input(z.object({ search: line(80) }))
    .query(({ ctx, input }) => findCharacteristics(ctx.scope, input.search)),
  characteristic: member
    .input(z.object({ key: line(80) }))
    .query(async ({ ctx, input }) => (await characteristicChoice(ctx.scope, input.key)) ?? null),
  previewMerge: member
    .input(z.object({ into: line(60).min(1), from: line(60).min(1) }))
    .query(({ ctx, input }) => previewMerge(ctx.scope, input)),
  merge: member.input(mergeCarsInput).mutation(({ ctx, input }) => mergeCars(ctx.scope, input)),
});
