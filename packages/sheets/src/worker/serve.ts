import { parentPort } from "node:worker_threads";
import type { SheetModel } from "@trunnion/register";
import { drawSheets } from "../draw-sheets";
import { readSheetForm } from "../read/read-form";
import type { Answered, Asked } from "./job";

/** The thread's own side. Jobs are done one after the other: two at once would only need twice the memory. */
const gathered = new Map<number, SheetModel[]>();
let before: Promise<void> = Promise.resolve();

async function answer(asked: Exclude<Asked, { kind: "models" }>): Promise<Answered> {
  const { id } = asked;
  try {
    if (asked.kind === "read") return { id, reading: await readSheetForm(asked.bytes) };
    const models = gathered.get(id) ?? [];
    gathered.delete(id);
    return { id, bytes: await drawSheets(models, asked.options) };
  } catch (error) {
    const told = error instanceof Error ? error : new Error(String(error));
    const refused = told instanceof RangeError;
    return { id, error: refused ? told.message : (told.stack ?? told.message), refused };
  }
}

parentPort?.on("message", (asked: Asked) => {
  if (asked.kind === "models") {
    gathered.set(asked.id, [...(gathered.get(asked.id) ?? []), ...asked.models]);
    return;
  }
  before = before.then(async () => {
    const answered = await answer(asked);
    const owned =
      "bytes" in answered && answered.bytes.buffer instanceof ArrayBuffer ? [answered.bytes.buffer] : [];
    parentPort?.postMessage(answered, owned);
  });
});
