import { expect, type Locator, type Page } from "@playwright/test";
import type { ChosenFile } from "./evidence.page";

/** What is used of the browser's own store of answers. */
interface BrowserCaches {
  readonly caches: {
    has(name: string): Promise<boolean>;
    open(name: string): Promise<{ match(url: string, how: object): Promise<unknown> }>;
  };
}

/** The form of a change, and where it begins. */
export class DraftPage {
  constructor(private readonly page: Page) {}

  /** Begins a change to the first of one's own cars, with some parts ticked. */
  async begin(parts: readonly string[]): Promise<void> {
    const { page } = this;
    await page.goto("/club/sandvaer/garage");
    await page.getByRole("link", { name: "Record a change" }).first().click();
    const address = await page
      .getByRole("link", { name: /Front suspension|Settings/ })
      .first()
      .getAttribute("href");
    const assembly = parts.some((part) => part.includes("camber")) ? "settings" : "frontSuspension";
    await page.goto((address ?? "").replace(/assembly=\w+/, `assembly=${assembly}`));
    for (const part of parts) await page.getByRole("checkbox", { name: part, exact: true }).check();
    await page.getByRole("button", { name: "Go on" }).click();
    await expect(page).toHaveURL(/\/submission\//);
    await expect(page.getByRole("heading", { name: "What was changed" })).toBeVisible();
  }

  async write(label: string, text: string): Promise<void> {
    await this.page.getByLabel(label, { exact: true }).first().fill(text);
  }

  /** Chooses what is on it now where that is one of a list. */
  async choose(label: string): Promise<void> {
    await this.page.locator("select[name$='.after']").first().selectOption({ label });
  }

  /** Photos of the change, one after the other. */
  get photos(): Locator {
    return this.page.getByRole("list", { name: "Photos of this change" }).getByRole("listitem");
  }

  async photo(files: readonly ChosenFile[]): Promise<void> {
    await this.page.getByLabel("Choose photos or documents").setInputFiles([...files]);
  }

  /** Whether the worker has the page of a draft, to show it without a signal. */
  async isKeptOffline(address: string): Promise<boolean> {
    return this.page.evaluate(async (url) => {
      const { caches } = globalThis as unknown as BrowserCaches;
      if (!(await caches.has("draft-pages"))) return false;
      return (await (await caches.open("draft-pages")).match(url, { ignoreVary: true })) !== undefined;
    }, address);
  }

  async keptOffline(): Promise<void> {
    await expect.poll(() => this.isKeptOffline(this.page.url()), { timeout: 30_000 }).toBe(true);
  }

  async saved(): Promise<void> {
    await expect(this.page.getByText(/^Saved at/)).toBeVisible();
  }
}
