import type { Locator, Page } from "@playwright/test";
import { fileFrom, type SentFile } from "./file";

const sheets = /\/sheets\.pdf(\?|$)/;

export class EventPage {
  readonly print: Locator;
  readonly entries: Locator;

  constructor(readonly page: Page) {
    this.print = page.getByRole("button", { name: /^Print \d+ sheets?$/ });
    this.entries = page.getByRole("table", { name: "Entries in running-number order" }).locator("tbody tr");
  }

  async open(club: string, event: string): Promise<this> {
    await this.page.goto(`/club/${club}/event/${event}`);
    return this;
  }

  async runningNumbers(): Promise<readonly string[]> {
    return (await this.entries.locator("th").allInnerTexts()).map((text) => text.trim());
  }

  entryOf(chassis: string): Locator {
    return this.entries.filter({ has: this.page.getByRole("link", { name: chassis, exact: true }) });
  }

  async runningNumberOf(chassis: string): Promise<string> {
    return ((await this.entryOf(chassis).locator("th").textContent()) ?? "").trim();
  }

  /** Presses the button, and takes the file. */
  printAll(): Promise<SentFile> {
    return fileFrom(this.page, sheets, () => this.print.click());
  }

  /** Follows the link in the row of one running number, and takes the file. */
  printOne(number: string): Promise<SentFile> {
    const link = this.page.getByRole("link", { name: `Print the sheet of number ${number}`, exact: true });
    return fileFrom(this.page, sheets, () => link.click());
  }
}
