import { type Latest, latestOnly } from "./latest-answer";

/** What a page of the register has that changes with what is looked for. */
export interface Found {
  /** How many were found. */
  readonly told: string;
  readonly html: string;
}

/** What is shown: the page as it came where nothing was found since, and how it stands with what is asked. */
export interface Following {
  readonly found?: Found;
  readonly asking: boolean;
  readonly failed: boolean;
}

export const notFollowing: Following = { asking: false, failed: false };

/** How long nobody presses a key before the register is asked. */
const PAUSE_MS = 150;

/** The address a GET form leads to; fields left empty are no part of it. */
export function addressOf(form: HTMLFormElement): string {
  const asked = new URLSearchParams();
  for (const [name, value] of new FormData(form))
    if (typeof value === "string" && value.trim() !== "") asked.set(name, value);
  return asked.size === 0 ? form.action : `${form.action}?${asked}`;
}

/** Where a pressed link leads, with what was typed since the list it stands in was drawn. */
export function withTyped(href: string, form: HTMLFormElement): string {
  const url = new URL(href);
  for (const field of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>(
    "input:not([type=hidden]), select",
  )) {
    if (field.value.trim() === "") url.searchParams.delete(field.name);
    else url.searchParams.set(field.name, field.value);
  }
  return url.href;
}

/** Asks for the very page an address is of, and takes out of it what changes. */
async function pageAt(url: string, signal: AbortSignal): Promise<Found> {
  const response = await fetch(url, { signal, headers: { accept: "text/html" } });
  if (response.redirected) {
    // To sign in, perhaps: so goes whoever asked, and what was typed goes along in the address.
    window.location.assign(url);
    return new Promise(() => undefined);
  }
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  const html = page.getElementById("found")?.innerHTML;
  if (html === undefined) throw new Error(`no list at ${url}`);
  return { told: page.getElementById("found-told")?.textContent ?? "", html };
}

/** Follows what is typed and pressed: the address first, the list when it comes. */
export class Follower {
  #pause = 0;
  /** Address of what is shown or on its way. */
  #address = "";
  readonly #latest: Latest;
  readonly #change: (to: (now: Following) => Following) => void;

  constructor(change: (to: (now: Following) => Following) => void) {
    this.#change = change;
    this.#latest = latestOnly(pageAt, (_url, outcome) => {
      // Not there: the next key asks for it again, and so does the signal when it comes back.
      if (!outcome.ok) this.#address = "";
      change((now) =>
        outcome.ok
          ? { found: outcome.answer, asking: false, failed: false }
          : { ...now, asking: false, failed: true },
      );
    });
  }

  /** Begins with the page as it came. */
  begin(): void {
    this.#address = window.location.href;
  }

  /** Asks for what the address names, now. */
  ask(url: string): void {
    window.clearTimeout(this.#pause);
    this.#address = url;
    this.#change((now) => ({ ...now, asking: true }));
    void this.#latest.ask(url);
  }

  /** Asks for what a form says once nobody has typed for a moment; its address takes the place of the one before. */
  type(form: HTMLFormElement, wait = PAUSE_MS): void {
    window.clearTimeout(this.#pause);
    this.#pause = window.setTimeout(() => {
      const url = addressOf(form);
      if (url === this.#address) return;
      window.history.replaceState(window.history.state, "", url);
      this.ask(url);
    }, wait);
  }

  /** Asks once more where no answer came. */
  again(): void {
    if (this.#address === "") this.ask(window.location.href);
  }

  stop(): void {
    window.clearTimeout(this.#pause);
    this.#latest.stop();
  }
}
