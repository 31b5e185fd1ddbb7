import type { Locator, Page } from "@playwright/test";

/** A series' specification: what was specified, its versions, and the draft of the next. */
export class SpecificationPage {
  readonly lead: Locator;
  readonly versions: Locator;
  readonly review: Locator;
  readonly changes: Locator;
  readonly moves: Locator;
  /** What was wrong with a form that was sent. */
  readonly refusal: Locator;

  constructor(readonly page: Page) {
    this.lead = page.getByRole("main").locator("header").first();
    this.versions = page.getByRole("region", { name: "Versions" });
    this.review = page.getByRole("link", { name: "Review and make current" });
    this.changes = page.getByRole("region", { name: "What changes" });
    this.moves = page.getByRole("region", { name: "Which cars that moves" });
    this.refusal = page.getByRole("main").getByRole("alert");
  }

  async open(club: string, series: string, version?: number): Promise<this> {
    const path = `/club/${club}/specification/series/${series}`;
    await this.page.goto(version === undefined ? path : `${path}/version/${version}`);
    return this;
  }

  /** Begins the next version as `from` says: "an empty one", "a copy of version 1, current". */
  async begin(from: string): Promise<void> {
    await this.page.getByLabel("It begins as").selectOption({ label: from });
    await this.page.getByRole("button", { name: "Begin a new version" }).click();
    await this.page.waitForURL(/\/version\/\d+$/);
  }

  /** The row of an entry, by its characteristic. */
  entry(label: string): Locator {
    return this.page.getByRole("row", { name: new RegExp(`^${label}`) }).first();
  }

  async change(label: string): Promise<void> {
    await this.entry(label).getByRole("link", { name: "Change" }).click();
    await this.page.waitForURL(/\/entry\//);
  }

  async save(): Promise<void> {
    await this.page.getByRole("button", { name: "Save the entry" }).click();
  }
}
