import { expect, type Locator, type Page } from "@playwright/test";

/** Where a condition on the register is put together. */
export class FilterPage {
  readonly show: Locator;
  readonly parts: Locator;
  readonly problems: Locator;

  constructor(readonly page: Page) {
    this.show = page.getByRole("button", { name: "Show the cars" });
    this.parts = page.getByLabel("Ask about");
    this.problems = page.getByRole("main").getByRole("alert");
  }

  async open(club: string, query = ""): Promise<this> {
    await this.page.goto(`/club/${club}/filter${query}`);
    return this;
  }

  /** Field of a part by its place, as the form names it: `of.0.figure`. */
  field(name: string): Locator {
    return this.page.locator(`[name="${name}"]`);
  }

  /** Names a characteristic, and has the fields that go with it drawn. */
  async characteristic(part: string, name: string): Promise<void> {
    await this.field(`${part}.characteristic`).fill(name);
    const lookUp = this.page.getByRole("button", { name: "Look it up" }).first();
    await lookUp.click();
    await expect(this.field(`${part}.ask`)).toBeVisible();
  }

  /** Presses a button of the form and waits until it is drawn again with so many parts. */
  async press(name: string, parts: number, which = 0): Promise<void> {
    await this.page.getByRole("button", { name, exact: true }).nth(which).click();
    await expect(this.parts).toHaveCount(parts);
  }
}
