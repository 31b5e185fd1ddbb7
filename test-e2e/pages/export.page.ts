import type { Download, Locator, Page } from "@playwright/test";

/** Where the club's archive and its lists are fetched. */
export class ExportPage {
  readonly archive: Locator;
  readonly withPeople: Locator;
  readonly lists: Locator;

  constructor(readonly page: Page) {
    this.archive = page.getByRole("button", { name: "Download the archive" });
    this.withPeople = page.getByRole("radio", { name: /^With personal data/ });
    this.lists = page.getByRole("main").getByRole("listitem");
  }

  async open(club: string): Promise<this> {
    await this.page.goto(`/club/${club}/export`);
    return this;
  }

  /** "Register of cars, as CSV", "Register of cars, with keepers, as XLSX". */
  list(name: string): Locator {
    return this.page.getByRole("link", { name, exact: true });
  }

  async fetch(what: Locator): Promise<Download> {
    const coming = this.page.waitForEvent("download");
    await what.click();
    return coming;
  }
}
