import type { Locator, Page } from "@playwright/test";

export class InvitationPage {
  readonly heading: Locator;
  readonly name: Locator;
  readonly password: Locator;
  readonly join: Locator;

  constructor(readonly page: Page) {
    this.heading = page.getByRole("heading", { level: 1 });
    this.name = page.getByLabel("Your name");
    this.password = page.getByLabel(/^(Choose a password|Your password here)$/);
    this.join = page.getByRole("button", { name: "Join the club" });
  }

  async open(path: string): Promise<this> {
    await this.page.goto(path);
    return this;
  }
}
