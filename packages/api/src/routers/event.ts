import {
  carEvents,
  changeEntry,
  changeEntryInput,
  changeEvent,
  changeEventInput,
  enterCar,
  enterCarInput,
  entryForm,
  entryPage,
  eventForm,
  eventPage,
  listEvents,
  planEvent,
  planEventInput,
  readEntryList,
  readTableFile,
  takeEntryList,
  takeEntryListInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const ofEvent = z.object({ event: line(60).min(1) });

export const eventRouter = router({
  list: member.query(({ ctx }) => listEvents(ctx.scope)),
  /** What events have to do with one car. */
  ofCar: member
    .input(z.object({ car: line(60).min(1) }))
    .query(({ ctx, input }) => carEvents(ctx.scope, input.car)),
  page: member.input(ofEvent).query(({ ctx, input }) => eventPage(ctx.scope, input.event)),
  /** What the forms of events and entries offer. */
  form: member
    .input(z.object({ event: line(60).min(1).optional() }))
    .query(({ ctx, input }) => eventForm(ctx.scope, input.event)),
  plan: member.input(planEventInput).mutation(({ ctx, input }) => planEvent(ctx.scope, input)),
  change: member.input(changeEventInput).mutation(({ ctx, input }) => changeEvent(ctx.scope, input)),
  enter: member.input(enterCarInput).mutation(({ ctx, input }) => enterCar(ctx.scope, input)),
  changeEntry: member.input(changeEntryInput).mutation(({ ctx, input }) => changeEntry(ctx.scope, input)),
  /** A list of entries read against the register; nothing is written. */
  readList: member
    .input(ofEvent.extend({ text: z.string() }))
    .query(({ ctx, input }) => readEntryList(ctx.scope, input)),
  /** A file of entries as the text of the box: rows on lines, cells between tabs. */
  listText: member
    .input(ofEvent.extend({ file: line(200), bytes: z.instanceof(Uint8Array) }))
    .query(async ({ input: { file, bytes } }) => {
      const { headings, rows } = await readTableFile({ file, bytes });
      const said = (cells: readonly string[]) =>
        cells.map((cell) => cell.replace(/[\t\r\n]+/g, " ")).join("\t");
      return [headings, ...rows.map(({ cells }) => cells)].map(said).join("\n");
    }),
  takeList: member.input(takeEntryListInput).mutation(({ ctx, input }) => takeEntryList(ctx.scope, input)),
  /** One entry with its form, withdrawn or not. */
  entryForm: member
    .input(ofEvent.extend({ number: line(12).min(1) }))
    .query(({ ctx, input }) => entryForm(ctx.scope, input)),
  /** One entry at scrutineering. */
  entry: member
    .input(ofEvent.extend({ number: line(12).min(1), all: z.boolean().optional() }))
    .query(({ ctx, input: { all, ...of } }) =>
      entryPage(ctx.scope, { ...of, ...(all === undefined ? {} : { all }) }),
    ),
});
