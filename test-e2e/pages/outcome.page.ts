import { expect, type Page } from "@playwright/test";

/** Traces of the program's inside that no page may show, in what is read or in what is sent. */
const inside = /\bat \S+ \(|node_modules|\.next\/|prisma|Error:|\[object |postgres|\/packages\//i;

/** A whole page that says no. */
export class OutcomePage {
  constructor(readonly page: Page) {}

  /** What the page says, without heading and frame, and where it leads on. */
  async words(): Promise<string> {
    const [text = ""] = await this.page.getByRole("main").allInnerTexts();
    return text.replace(/\s+/g, " ").trim();
  }

  async showsNothingInside(): Promise<void> {
    expect(await this.page.content()).not.toMatch(inside);
  }
}
