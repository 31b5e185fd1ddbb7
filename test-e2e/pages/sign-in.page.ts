import type { Locator, Page } from "@playwright/test";

export class SignInPage {
  readonly heading: Locator;
  readonly email: Locator;
  readonly password: Locator;
  readonly button: Locator;
  /** Why one was refused, in words. */
  readonly refusal: Locator;

  constructor(readonly page: Page) {
    this.heading = page.getByRole("heading", { name: "Sign in", level: 1 });
    this.email = page.getByLabel("E-mail address");
    this.password = page.getByLabel("Password");
    this.button = page.getByRole("button", { name: "Sign in" });
    this.refusal = page.getByRole("main").getByRole("alert");
  }

  /** Opens the form, to go on to `next` afterwards. */
  async open(next?: string): Promise<this> {
    await this.page.goto(next === undefined ? "/sign-in" : `/sign-in?next=${encodeURIComponent(next)}`);
    return this;
  }

  /** Fills the form and sends it, whatever comes of it. */
  async send(email: string, password: string): Promise<void> {
    await this.email.fill(email);
    await this.password.fill(password);
    await this.button.click();
  }
}
