import type { Cookie, Page } from "@playwright/test";

/** Who can sign in to the demo. */
export type Who = "registrar" | "owner" | "scrutineer" | "fleet";

/** Cookies of those who have signed in, per worker: tries to sign in are limited, and most tests are not about them. */
const known = new Map<Who, Cookie[]>();

/** Signing in and going about, as a person does. */
export class Desk {
  constructor(readonly page: Page) {}

  async fillSignIn(email: string, password: string): Promise<void> {
    await this.page.getByLabel("E-mail address").fill(email);
    await this.page.getByLabel("Password").fill(password);
    await this.page.getByRole("button", { name: "Sign in" }).click();
  }

  /** Signs in by the form, in a session of one's own, and arrives at the page asked for. */
  async signIn(who: Who, path = "/"): Promise<void> {
    await this.page.goto(path);
    await this.fillSignIn(`${who}@demo.test`, "walk round the car");
    await this.page.waitForURL((url) => !url.pathname.startsWith("/sign-in"));
  }

  /** Opens a page as one of the demo's people. */
  async open(who: Who, path = "/"): Promise<void> {
    const cookies = known.get(who);
    if (cookies) {
      await this.page.context().addCookies(cookies);
      await this.page.goto(path);
      return;
    }
    await this.signIn(who, path);
    known.set(who, await this.page.context().cookies());
  }
}
