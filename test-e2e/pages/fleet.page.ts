import type { Page } from "@playwright/test";

export class FleetPage {
  constructor(readonly page: Page) {}

  async open(club: string): Promise<this> {
    await this.page.goto(`/club/${club}/fleet`);
    return this;
  }

  /** Chooses a characteristic, and waits for its page. */
  async characteristic(label: string): Promise<void> {
    await this.page
      .getByRole("combobox", { name: "One characteristic across the cars" })
      .selectOption({ label });
    await this.page.getByRole("button", { name: "Show its spread" }).click();
    await this.page.waitForURL(/\/fleet\/characteristic\/./);
  }

  async choose(field: string, label: string): Promise<void> {
    await this.page.getByRole("combobox", { name: field }).selectOption({ label });
    await this.page.getByRole("button", { name: "Show", exact: true }).click();
    await this.page.waitForURL(/[?&]series=/);
  }

  /** How many values each bar of the section's drawing stands for. */
  async drawnCounts(section: string): Promise<readonly number[]> {
    const bars = this.page.locator(`section[aria-labelledby="${section}"] svg.plot g[data-count]`);
    return bars.evaluateAll((all) => all.map((bar) => Number(bar.getAttribute("data-count"))));
  }

  /** The same as the table behind it says. */
  async tabledCounts(caption: string): Promise<readonly number[]> {
    const cells = this.page
      .locator("table", { has: this.page.locator("caption", { hasText: caption }) })
      .locator("tbody tr td:nth-child(2)");
    return cells.evaluateAll((all) => all.map((cell) => Number(cell.textContent)));
  }
}
