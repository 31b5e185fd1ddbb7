import type { BrowserContext } from "@playwright/test";

/** What a browser says when the page it was sent to is answered with 403, 404 or the like. */
export const answeredWith = (status: number): RegExp =>
  new RegExp(`the server responded with a status of ${status}`);

/**
 * Gathers what must not happen in passing on any page: errors on the console (a breach of the content policy is one),
 * errors nobody caught, answers of 500 and above, and anything asked of another server.
 */
export class Complaints {
  readonly #found: string[] = [];
  readonly #allowed: RegExp[] = [];

  /** For a test whose very subject is that answer. */
  allow(pattern: RegExp): void {
    this.#allowed.push(pattern);
  }

  notAllowed(): readonly string[] {
    return this.#found.filter((line) => !this.#allowed.some((pattern) => pattern.test(line)));
  }

  listenTo(context: BrowserContext, origin: string): void {
    context.on("console", (message) => {
      if (message.type() === "error")
        this.#found.push(`console: ${message.text()} (${message.location().url})`);
    });
    context.on("weberror", (error) => this.#found.push(`not caught: ${error.error().message}`));
    context.on("response", (response) => {
      if (response.status() >= 500) this.#found.push(`answered ${response.status()}: ${response.url()}`);
    });
    context.on("request", (request) => {
      const { protocol, origin: asked } = new URL(request.url());
      if (/^https?:$/.test(protocol) && asked !== origin)
        this.#found.push(`asked of another server: ${asked}`);
    });
  }
}
