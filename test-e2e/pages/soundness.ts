import type { Page } from "@playwright/test";

/** Roles that must have a name to be told apart by who cannot see them. */
const named =
  "link|button|textbox|searchbox|combobox|listbox|radio|checkbox|spinbutton|slider|img|table|navigation|region|figure";
const nameless = new RegExp(`^\\s*- '?(${named})(?! ")(?=$|:| \\[)`);

/** Run in the page: what sticks out to the right, ids that stand there twice, what is tied to nothing. */
const measure = `(() => {
  const width = document.documentElement.clientWidth;
  const clipped = (element) => {
    for (let one = element; one && one !== document.body; one = one.parentElement) {
      const { overflowX, clipPath, position, width: wide } = getComputedStyle(one);
      if (overflowX !== "visible" || clipPath !== "none" || (position === "absolute" && wide === "1px")) return true;
    }
    return false;
  };
  const out = [...document.body.querySelectorAll("*")]
    .filter((element) => element.getBoundingClientRect().right > width + 1 && element.checkVisibility() && !clipped(element))
    .map((element) => element.tagName.toLowerCase() + ": " + element.textContent.trim().slice(0, 40));
  const ids = [...document.querySelectorAll("[id]")].map(({ id }) => id);
  return {
    scroll: document.documentElement.scrollWidth - width,
    out: out.slice(0, 3),
    twice: ids.filter((id, index) => ids.indexOf(id) !== index),
    loose: ["aria-describedby", "aria-labelledby", "for"].flatMap((name) =>
      [...document.querySelectorAll("[" + name + "]")].flatMap((element) =>
        element.getAttribute(name).split(/\\s+/).filter((id) => id !== "" && !document.getElementById(id))
          .map((id) => name + " to " + id))),
    untold: [...document.querySelectorAll("[aria-invalid='true']")]
      .filter((element) => !element.getAttribute("aria-describedby"))
      .map((element) => element.name || element.id),
    h1: document.querySelectorAll("h1").length,
    language: document.documentElement.lang,
  };
})()`;

interface Measured {
  readonly scroll: number;
  readonly out: readonly string[];
  readonly twice: readonly string[];
  readonly loose: readonly string[];
  readonly untold: readonly string[];
  readonly h1: number;
  readonly language: string;
}

/** What is wrong with the page as it stands, for who looks at it on this screen and for who has it read out. */
export async function unsoundness(page: Page): Promise<readonly string[]> {
  const { scroll, out, twice, loose, untold, h1, language } = (await page.evaluate(measure)) as Measured;
  const outline = await page.locator("body").ariaSnapshot();
  return [
    ...(scroll > 0 ? [`scrolls sideways by ${scroll} px`] : []),
    ...out.map((element) => `sticks out to the right: ${element}`),
    ...twice.map((id) => `two elements have the id ${id}`),
    ...loose.map((one) => `leads nowhere: ${one}`),
    ...untold.map((field) => `${field} is said to be wrong, and not why`),
    ...(h1 === 1 ? [] : [`${h1} headings of the first level`]),
    ...(language === "" ? ["does not say its language"] : []),
    ...((await page.title()) === "" ? ["has no title"] : []),
    ...outline
      .split("\n")
      .filter((line) => nameless.test(line))
      .map((line) => `has no name: ${line.trim()}`),
  ];
}
