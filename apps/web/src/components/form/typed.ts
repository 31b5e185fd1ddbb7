type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

/** What stands in the fields of a form, by their names. */
export type Typed = Readonly<Record<string, string>>;

/** What people fill in: no hidden fields, which are made anew with each page, and nothing but text and choices. */
function controlsOf(form: HTMLFormElement): readonly Control[] {
  return [...form.elements].filter(
    (one): one is Control =>
      (one instanceof HTMLInputElement &&
        !["hidden", "file", "submit", "checkbox", "radio"].includes(one.type)) ||
      one instanceof HTMLSelectElement ||
      one instanceof HTMLTextAreaElement,
  );
}

/** What the page brought in a field, whatever stands in it now. */
function broughtIn(control: Control): string {
  if (!(control instanceof HTMLSelectElement)) return control.defaultValue;
  const options = [...control.options];
  return (options.find(({ defaultSelected }) => defaultSelected) ?? options[0])?.value ?? "";
}

/** What the page brought, by the names of the fields: what was typed before any script came is not of it. */
export const broughtTo = (form: HTMLFormElement): Typed =>
  Object.fromEntries(controlsOf(form).map((one) => [one.name, broughtIn(one)]));

/** What differs from how the form was opened: what was typed, however often it was sent and refused meanwhile. */
export const typedOver = (form: HTMLFormElement, opened: Typed): Typed =>
  Object.fromEntries(
    controlsOf(form)
      .filter(({ name, value }) => opened[name] !== value)
      .map(({ name, value }) => [name, value]),
  );

/** Writes into the fields as if it were typed; tells how many it changed. */
export function writeInto(form: HTMLFormElement, typed: Typed): number {
  const changed = controlsOf(form).filter(({ name, value }) => (typed[name] ?? value) !== value);
  for (const one of changed) {
    one.value = typed[one.name] ?? "";
    one.closest("details")?.setAttribute("open", "");
    one.dispatchEvent(new Event("input", { bubbles: true }));
  }
  return changed.length;
}
