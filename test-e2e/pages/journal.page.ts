import type { Locator, Page } from "@playwright/test";

export class JournalPage {
  readonly entries: Locator;
  readonly next: Locator;
  readonly check: Locator;
  readonly chain: Locator;

  constructor(readonly page: Page) {
    this.entries = page.getByRole("list", { name: "Entries" }).locator("> li");
    this.next = page.getByRole("link", { name: "Next" });
    this.check = page.getByRole("button", { name: "Check the chain" });
    this.chain = page.getByRole("region", { name: "Chain of the journal" });
  }

  async open(query = ""): Promise<this> {
    await this.page.goto(`/club/sandvaer/journal${query}`);
    return this;
  }

  async openOf(reference: string, query = ""): Promise<this> {
    await this.page.goto(`/club/sandvaer/car/${encodeURIComponent(reference)}/journal${query}`);
    return this;
  }

  /** Narrows the journal by the form: the labels of its fields, with what goes into them. */
  async narrow(fields: Readonly<Record<string, string>>): Promise<void> {
    const form = this.page.getByRole("form", { name: "Narrow the journal" });
    for (const [label, value] of Object.entries(fields)) {
      const field = form.getByLabel(label, { exact: true });
      if ((await field.evaluate((one) => one.tagName)) === "SELECT")
        await field.selectOption({ label: value });
      else await field.fill(value);
    }
    await form.getByRole("button", { name: "Show" }).click();
  }
}
