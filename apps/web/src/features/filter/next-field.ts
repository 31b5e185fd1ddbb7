import { childPath, type Draft, type DraftGroup, type DraftPath, draftField } from "@trunnion/register";
import { editOf } from "./button";

const indexesOf = (path: DraftPath) => (path.match(/\d+/g) ?? []).map(Number);

function groupAt(draft: DraftGroup, path: DraftPath): DraftGroup | undefined {
  let one: Draft | undefined = draft;
  for (const index of indexesOf(path)) one = one?.kind === "group" ? one.of[index] : undefined;
  return one?.kind === "group" ? one : undefined;
}

/** First field of a part or group. */
const firstOf = (path: DraftPath) => [draftField(path, "about"), draftField(path, "join")];

function childOf(draft: DraftGroup, path: DraftPath, index: number): readonly string[] {
  const last = (groupAt(draft, path)?.of.length ?? 0) - 1;
  const child = last < 0 ? [] : firstOf(childPath(path, Math.min(index, last)));
  return [...child, draftField(path, "join")];
}

/**
 * Names of fields, the first that is there, on which somebody goes on who pressed a button of the form: the fields are made
 * anew, and the keyboard would begin at the top of the page again.
 *
 * @param pressed value of the button
 * @param part where the button stands
 * @param after the draft as it is drawn now
 */
export function nextFields(pressed: string, part: DraftPath, after: DraftGroup): readonly string[] {
  const edit = editOf(pressed);
  if (edit === undefined)
    return [draftField(part, "ask"), draftField(part, "characteristic"), ...firstOf(part)];
  switch (edit.do) {
    case "pick":
      return [draftField(edit.at, "ask"), draftField(edit.at, "characteristic")];
    case "remove": {
      const parent = edit.at.replace(/(?:^|\.)of\.\d+$/, "");
      return childOf(after, parent, indexesOf(edit.at).at(-1) ?? 0);
    }
    default:
      return childOf(after, edit.at, Number.POSITIVE_INFINITY);
  }
}
