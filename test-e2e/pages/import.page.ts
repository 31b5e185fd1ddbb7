import type { Locator, Page } from "@playwright/test";

/** The list of imports, and the page of one. */
export class ImportPage {
  readonly file: Locator;
  readonly read: Locator;
  readonly refusal: Locator;
  readonly lookThrough: Locator;
  readonly undo: Locator;

  constructor(readonly page: Page) {
    this.file = page.getByLabel("File", { exact: true });
    this.read = page.getByRole("button", { name: "Read it" });
    this.refusal = page.getByRole("main").getByRole("alert");
    this.lookThrough = page.getByRole("button", { name: "Look through the file" });
    this.undo = page.getByRole("button", { name: "Undo this import" });
  }

  async open(club: string): Promise<this> {
    await this.page.goto(`/club/${club}/import`);
    return this;
  }

  /** Chooses a file and sends it, whatever comes of it. */
  async send(name: string, content: string | Buffer): Promise<void> {
    const buffer = typeof content === "string" ? Buffer.from(content) : content;
    await this.file.setInputFiles({ name, mimeType: "application/octet-stream", buffer });
    await this.read.click();
  }

  /** What the column with this letter is taken for. */
  takenFor(letter: string, heading: string): Locator {
    return this.column(letter, heading).getByLabel("Taken for");
  }

  unit(letter: string, heading: string): Locator {
    return this.column(letter, heading).getByLabel("Unit of bare numbers");
  }

  private column(letter: string, heading: string): Locator {
    return this.page.getByRole("group", { name: `Column ${letter}, ${heading}` });
  }

  /** Waits until the page, which looks again by itself, says this. */
  async waitFor(text: string | RegExp): Promise<void> {
    await this.page.getByRole("main").getByText(text).first().waitFor();
  }
}
