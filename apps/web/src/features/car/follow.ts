import { type Found, foundIn, partHeader } from "./found-part";
import { type Latest, latestOnly } from "./latest-answer";

/** What is shown: the page as it came where nothing was found since, and how it stands with what is asked. */
export interface Following {
  /** How many were found, once something was. */
  readonly told?: string;
  /** How many answers were shown. */
  readonly shown: number;
  readonly asking: boolean;
  readonly failed: boolean;
}

export const notFollowing: Following = { shown: 0, asking: false, failed: false };

/** Shows what was found; `isLatest` says whether nothing newer is being shown meanwhile. */
export type Show = (html: string, isLatest: () => boolean) => Promise<void>;

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
  const response = await fetch(url, { signal, headers: { accept: "text/html", [partHeader]: "list" } });
  if (response.redirected) {
    // To sign in, perhaps: so goes whoever asked, and what was typed goes along in the address.
    window.location.assign(url);
    return new Promise(() => undefined);
  }
  const found = foundIn(await response.text());
  if (found === undefined) throw new Error(`no list at ${url}`);
  return found;
}

/** Follows what is typed and pressed: the address first, the list when it comes. */
export class Follower {
  #pause = 0;
  /** Address of what is shown or on its way. */
  #address = "";
  readonly #latest: Latest;
  /** Which answer is being shown. */
  #shown = 0;
  #asking = false;
  #failed = false;
  readonly #change: (to: (now: Following) => Following) => void;
  readonly #show: Show;

  constructor(change: (to: (now: Following) => Following) => void, show: Show) {
    this.#change = change;
    this.#show = show;
    this.#latest = latestOnly(pageAt, (_url, outcome) => {
      this.#asking = false;
      this.#failed = !outcome.ok;
      if (outcome.ok) return void this.#answered(outcome.answer);
      // Not there: the next key asks for it again, and so does the signal when it comes back.
      this.#address = "";
      change((now) => ({ ...now, asking: false, failed: true }));
    });
  }

  /** Tells of an answer once all of it is shown, unless another one has taken its place. */
  async #answered({ told, html }: Found): Promise<void> {
    this.#shown += 1;
    const mine = this.#shown;
    await this.#show(html, () => this.#shown === mine);
    if (this.#shown !== mine) return;
    // Another question may have been asked meanwhile, and have failed.
    this.#change(() => ({ told, shown: mine, asking: this.#asking, failed: this.#failed }));
  }

  /** Begins with the page as it came. */
  begin(): void {
    this.#address = window.location.href;
  }

  /** Asks for what the address names, now. */
  ask(url: string): void {
    window.clearTimeout(this.#pause);
    this.#address = url;
    this.#asking = true;
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
    this.#shown += 1;
    this.#latest.stop();
  }
}
