import type { DraftEdit } from "@trunnion/register";

/** What a button of the form says it does, in its value: "addPart of.0", "pick of.1 front.camber". */
export function buttonValue(edit: DraftEdit): string {
  return edit.do === "pick" ? `pick ${edit.at} ${edit.characteristic}` : `${edit.do} ${edit.at}`.trim();
}

const path = /^(?:of\.\d{1,3}(?:\.of\.\d{1,3})*)?$/;

/** The edit a pressed button stands for; nothing for any other text. */
export function editOf(value: string): DraftEdit | undefined {
  const [verb = "", at = "", ...rest] = value.split(" ");
  if (!path.test(at)) return undefined;
  if (verb === "pick") return { do: "pick", at, characteristic: rest.join(" ") };
  if (verb === "addPart" || verb === "addGroup" || verb === "remove") return { do: verb, at };
  return undefined;
}

/** Value of the button that only draws the form again: fields that go with what was just chosen. */
export const refresh = "refresh";
