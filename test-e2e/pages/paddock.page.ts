import { expect, type Locator, type Page } from "@playwright/test";

/** An event in the hand: the list of cars, and one car's checks. */
export class PaddockPage {
  readonly search: Locator;
  readonly line: Locator;

  constructor(readonly page: Page) {
    this.search = page.getByRole("searchbox", { name: "Running number, chassis or driver" });
    this.line = page.getByRole("main").getByRole("status").first();
  }

  async open(club: string, event: string): Promise<this> {
    await this.page.goto(`/club/${club}/event/${event}/paddock`);
    return this;
  }

  /** Waits until the page has said that it opens without a connection. */
  async readyForNoConnection(): Promise<void> {
    await expect(this.page.getByText("Opens without a connection.")).toBeVisible();
  }

  async car(number: string): Promise<void> {
    await this.search.fill(number);
    await this.page.getByRole("main").getByRole("listitem").getByRole("link").first().click();
    await expect(this.page.getByRole("heading", { level: 1 })).toContainText(number);
  }

  async allCars(): Promise<void> {
    await this.page.getByRole("link", { name: "All cars" }).click();
  }

  /** The row of one running number in the list. */
  async rowOf(number: string): Promise<Locator> {
    await this.search.fill(number);
    return this.page.getByRole("main").getByRole("listitem").first();
  }

  check(text: string | RegExp): Locator {
    return this.page
      .getByRole("listitem")
      .filter({ has: this.page.getByRole("heading", { level: 3, name: text }) });
  }

  async say(text: string | RegExp, result: "Pass" | "Advise" | "Refuse" | "Not applicable"): Promise<void> {
    const button = this.check(text).getByRole("button", { name: result, exact: true });
    await button.click();
    await expect(button).toHaveAttribute("aria-pressed", "true");
  }

  async note(text: string | RegExp, words: string): Promise<void> {
    const field = this.check(text).getByRole("textbox", { name: /^Note/ });
    if (!(await field.isVisible())) await this.check(text).getByText("Note", { exact: true }).click();
    await field.fill(words);
    await field.blur();
  }

  /** Passes everything that nothing was said of: station by station, then check by check. */
  async passRest(): Promise<void> {
    const together = this.page.getByRole("button", { name: /I have looked at the other \d+ here/ });
    for (let left = await together.count(); left > 0; left--) {
      await together.first().click();
      await expect(together).toHaveCount(left - 1);
    }
    const open = this.page
      .getByRole("listitem")
      .filter({ has: this.page.getByRole("heading", { level: 3 }) })
      .filter({ hasNot: this.page.locator('[aria-pressed="true"]') });
    for (let left = await open.count(); left > 0; left--) {
      await open.first().getByRole("button", { name: "Pass", exact: true }).click();
      await expect(open).toHaveCount(left - 1);
    }
  }

  async photo(text: string | RegExp, buffer: Buffer): Promise<void> {
    const file = { name: "boot.png", mimeType: "image/png", buffer };
    await this.check(text)
      .getByLabel(/^Photo/)
      .setInputFiles(file);
    await expect(this.check(text).getByText(/boot\.png/)).toBeVisible();
  }

  async decide(verb: string): Promise<void> {
    await this.page.getByRole("button", { name: verb, exact: true }).click();
    await expect(this.page.getByRole("region", { name: "Decision" })).toContainText("by ");
  }

  send(): Promise<void> {
    return this.page.getByRole("button", { name: "Send now" }).click();
  }
}
