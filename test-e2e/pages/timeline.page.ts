import type { Locator, Page } from "@playwright/test";

export class TimelinePage {
  readonly handle: Locator;
  readonly day: Locator;
  readonly believed: Locator;
  readonly show: Locator;
  readonly life: Locator;
  readonly doubts: Locator;

  constructor(readonly page: Page) {
    this.handle = page.getByRole("slider", { name: "Day shown" });
    this.day = page.getByLabel("Day shown", { exact: true }).and(page.locator("[type=date]"));
    this.believed = page.getByLabel("As the record stood on");
    this.show = page.getByRole("button", { name: "Show" });
    this.life = page.getByRole("table", { name: "The whole life, in order of the dates" });
    this.doubts = page.getByRole("region", { name: "What the dates leave open" });
  }

  async open(reference: string, query = ""): Promise<this> {
    await this.page.goto(`/club/sandvaer/car/${encodeURIComponent(reference)}/timeline${query}`);
    return this;
  }

  /** The day that is shown, as written. */
  heading(day: string): Locator {
    return this.page.getByRole("heading", { name: `On ${day}`, exact: true });
  }

  /** What the car has, on the day shown, of one characteristic of an assembly. */
  value(assembly: string, label: string): Locator {
    return this.page
      .getByRole("region", { name: new RegExp(`^\\d+\\s*${assembly}$`) })
      .getByRole("row", { name: new RegExp(`^${label} `) })
      .locator(".value-actual");
  }
}
