/** The form that cars ticked in a list are sent by, and the name of its field. */
export const tickedForm = "ticked";
export const tickedName = "cars";

const boxes = `input[name=${tickedName}]`;

/** References of the cars ticked in a list, each once. */
export function tickedIn(list: ParentNode | null): readonly string[] {
  const ticked = list?.querySelectorAll<HTMLInputElement>(`${boxes}:checked`) ?? [];
  return [...new Set([...ticked].map(({ value }) => value))];
}

function kept(reference: string): HTMLElement {
  const label = document.createElement("label");
  label.className = "tick";
  const box = document.createElement("input");
  Object.assign(box, { type: "checkbox", name: tickedName, value: reference, checked: true });
  box.setAttribute("form", tickedForm);
  label.append(box, reference);
  return label;
}

/** Ticks cars again in a list that has changed; those it no longer has stand by themselves beside the button. */
export function tickAgain(list: ParentNode, ticked: readonly string[]): void {
  const rows = [...list.querySelectorAll<HTMLInputElement>(`[data-rows] ${boxes}`)];
  for (const box of rows) if (ticked.includes(box.value)) box.checked = true;
  const shown = new Set(rows.map(({ value }) => value));
  list
    .querySelector("[data-kept]")
    ?.replaceChildren(...[...new Set(ticked)].filter((one) => !shown.has(one)).map(kept));
}
