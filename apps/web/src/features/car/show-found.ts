import { tickAgain, tickedIn } from "./tick";

/** Rows shown at once; the others follow when these have been painted, so that no key waits for all of them. */
const FIRST_ROWS = 16;
const NEXT_ROWS = 18;
/** Longest wait for a painting, milliseconds: a page that is not looked at is not painted. */
const PAINT_MS = 100;

const afterPaint = () =>
  new Promise<void>((resolve) => {
    const waited = window.setTimeout(resolve, PAINT_MS);
    window.requestAnimationFrame(() => {
      window.clearTimeout(waited);
      window.setTimeout(resolve);
    });
  });

/** Whether the parts of an element may be exchanged one by one. */
const isMade = (element: Element) => element.hasAttribute("data-parts");

/** Brings an element to what another one is: parts that are alike stay as they are, and keep what was opened in them. */
function bring(shown: Element, next: Element): void {
  const before = [...shown.children];
  const after = [...next.children];
  if (before.length !== after.length) {
    shown.replaceChildren(...after);
    return;
  }
  for (const [place, part] of after.entries()) {
    const old = before[place];
    if (!old) continue;
    if (part instanceof HTMLDetailsElement && old instanceof HTMLDetailsElement) part.open ||= old.open;
    if (old.isEqualNode(part)) continue;
    if (isMade(part) && isMade(old) && old.tagName === part.tagName) {
      for (const { name, value } of part.attributes) old.setAttribute(name, value);
      bring(old, part);
    } else old.replaceWith(part);
  }
}

export interface Finding {
  readonly html: string;
  /** Whether nothing newer is being shown meanwhile. */
  readonly isLatest: () => boolean;
  /** References of the cars that were ticked in what is shown. */
  readonly ticked: readonly string[];
}

/**
 * Shows what was found in place of what is shown: what did not change is left alone, and of a long list the first rows come
 * at once, the others when those have been painted.
 */
export async function showFound(shown: HTMLElement, { html, isLatest, ticked }: Finding): Promise<void> {
  const parsed = new DOMParser().parseFromString(html, "text/html").body;
  const next = document.adoptNode(parsed);
  const rows = [...next.querySelectorAll("[data-rows] > *")].slice(FIRST_ROWS);
  for (const row of rows) row.remove();
  bring(shown, next);
  tickAgain(shown, ticked);
  for (let from = 0; from < rows.length; from += NEXT_ROWS) {
    await afterPaint();
    if (!isLatest()) return;
    shown.querySelector("[data-rows]")?.append(...rows.slice(from, from + NEXT_ROWS));
    tickAgain(shown, [...ticked, ...tickedIn(shown)]);
  }
}
