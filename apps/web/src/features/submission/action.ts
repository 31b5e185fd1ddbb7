"use server";
import { problemsOf, type RouterInputs, refusalOf } from "@trunnion/api";
import { characteristicBook, emptySubmission, Invalid } from "@trunnion/register";
import { revalidatePath } from "next/cache";
import { sendForm, takeForm } from "../../lib/form";
import type { FormState } from "../../lib/form-state";
import { reviewPath, startChangePath, submissionPath } from "../../lib/path";
import { api } from "../../lib/service";
import { contentOfForm, editContent, editOf } from "./draft";

/** Begins a draft with the parts that were ticked. */
export async function beginChange(
  { club, car, clientKey }: { readonly club: string; readonly car: string; readonly clientKey: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: startChangePath(club, car),
    work: async () => {
      const caller = await api();
      const keys = data.getAll("part[]").filter((one) => typeof one === "string");
      const assembly = String(data.get("assembly") ?? "");
      const find = String(data.get("find") ?? "");
      if (data.get("do") !== "begin")
        return { to: startChangePath(club, car, { assembly, find, ticked: keys.join(",") }) };
      if (keys.length === 0) throw new Invalid([{ field: "part[]", message: "Tick at least one part." }]);
      const { own, system } = await caller.filter.form({ club });
      const said = data.get("units");
      const units = said === "imperial" || said === "metric" ? said : system;
      const content = editContent(
        emptySubmission(units),
        { kind: "add", to: 0, keys },
        characteristicBook(own),
      );
      const { id } = await caller.submission.create({ club, car, clientKey, content });
      return { to: submissionPath(club, id) };
    },
  });
}

type Step = RouterInputs["submission"]["step"]["step"];
const steps: readonly string[] = ["submit", "answer", "withdraw"] satisfies readonly Step[];

/** Keeps a draft, changes its lines, or moves it on, for browsers without a script; with one the form does it itself. */
export async function keepDraft(
  { club, id, key }: { readonly club: string; readonly id: string; readonly key: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const pressed = String(data.get("do") ?? "save");
  return takeForm({
    before,
    data,
    place: submissionPath(club, id),
    work: async () => {
      const caller = await api();
      const { submission, ground } = await caller.submission.page({ club, id });
      const typed = contentOfForm(data, submission.content);
      const edit = editOf(pressed, data);
      const content = edit === undefined ? typed : editContent(typed, edit, characteristicBook(ground.own));
      const version = Number(data.get("version") ?? 0);
      const saved = await caller.submission.save({ club, id, version, content, count: 1 });
      if (steps.includes(pressed)) {
        const text = String(data.get("text") ?? "");
        await caller.submission.step({ club, id, version: saved.version, key, step: pressed as Step, text });
        return { to: submissionPath(club, id) };
      }
      const shown =
        pressed === "show"
          ? {
              assembly: String(data.get("assembly") ?? ""),
              find: String(data.get("find") ?? ""),
              ticked: data.getAll("part[]").join(","),
            }
          : {};
      return { to: submissionPath(club, id, { ...shown, ...(edit?.kind === "add" ? { at: "parts" } : {}) }) };
    },
  });
}

/** Withdraws what was handed in, or says it anew, without its form. */
export async function stepAlone(
  { club, id, key }: { readonly club: string; readonly id: string; readonly key: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = submissionPath(club, id);
  type Entered = { readonly version: string; readonly text?: string };
  return sendForm<Entered>({ before, data, place }, async (to, { version, text = "" }) => {
    await to.submission.step({ club, id, key, version: Number(version), step: "withdraw", text });
    return place;
  });
}

/** Begins a correction of what is accepted. */
export async function beginCorrection(
  { club, id, clientKey }: { readonly club: string; readonly id: string; readonly clientKey: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = submissionPath(club, id);
  return sendForm({ before, data, place }, async (to) => {
    const next = await to.submission.correct({ club, id, clientKey });
    return submissionPath(club, next.id);
  });
}

type Decision = RouterInputs["submission"]["decide"]["decision"];
const decisions: readonly string[] = ["accept", "decline", "query"] satisfies readonly Decision[];

/** Decides about one submission, from its page. */
export async function decideOne(
  { club, id, key }: { readonly club: string; readonly id: string; readonly key: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: submissionPath(club, id) };
  type Entered = Readonly<Record<"version" | "text" | "keeperKnown", string>>;
  return sendForm<Entered>(sent, async (to, { version, text, keeperKnown }) => {
    const pressed = String(data.get("do") ?? "");
    if (!decisions.includes(pressed))
      throw new Invalid([{ field: "text", message: "Press one of the three buttons." }]);
    await to.submission.decide({
      club,
      id,
      key,
      version: Number(version),
      decision: pressed as Decision,
      text,
      keeperKnown: keeperKnown === "yes" ? "yes" : "no",
    });
    return reviewPath(club, { done: pressed, last: id });
  });
}

/** What came of deciding about several at once, as the queue tells it. */
interface Tally {
  readonly done: number;
  readonly failed: readonly string[];
}

/** Decides about every ticked submission, one by one, so that one that does not fit keeps none of the others back. */
export async function decideSeveral(
  { club, key }: { readonly club: string; readonly key: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const pressed = String(data.get("do") ?? "");
  const text = String(data.get("text") ?? "");
  return takeForm({
    before,
    data,
    place: reviewPath(club),
    work: async () => {
      // Each as `id version`, since what is decided about is what was shown.
      const chosen = data.getAll("chosen[]").map((one) => String(one).split(" "));
      if (!decisions.includes(pressed) || chosen.length === 0)
        throw new Invalid([{ field: "chosen[]", message: "Tick at least one submission." }]);
      if (pressed !== "accept" && text.trim() === "")
        throw new Invalid([{ field: "text", message: "Write the reason, or the question." }]);
      const tally = await decideEach({ club, key, text, decision: pressed as Decision }, chosen);
      revalidatePath(reviewPath(club));
      if (tally.failed.length === 0)
        return { to: reviewPath(club, { done: pressed, last: String(tally.done) }) };
      throw new Invalid([
        ...(tally.done === 0 ? [] : [{ field: "done", message: `${tally.done} went through.` }]),
        ...tally.failed.map((message, index) => ({ field: `failed.${index}`, message })),
      ]);
    },
  });
}

interface Deciding {
  readonly club: string;
  readonly key: string;
  readonly text: string;
  readonly decision: Decision;
}

async function decideEach(
  { club, key, text, decision }: Deciding,
  chosen: readonly (readonly string[])[],
): Promise<Tally> {
  const caller = await api();
  const failed: string[] = [];
  let done = 0;
  for (const [id = "", version = "", name = ""] of chosen) {
    try {
      await caller.submission.decide({
        club,
        id,
        key,
        version: Number(version),
        decision,
        text,
        keeperKnown: "no",
      });
      done += 1;
    } catch (error) {
      const because =
        refusalOf(error)?.text.what ?? [...new Set(Object.values(problemsOf(error) ?? {}).flat())].join(" ");
      if (because === "") throw error;
      failed.push(`${name}: ${because}`);
    }
  }
  return { done, failed };
}
