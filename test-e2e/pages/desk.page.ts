import type { Locator, Page } from "@playwright/test";

/** What every page of a club has around it, and the club's first page. */
export class DeskPage {
  /** Today, Register, Events. */
  readonly places: Locator;
  readonly you: Locator;
  readonly steps: Locator;

  constructor(readonly page: Page) {
    this.places = page.getByRole("navigation", { name: "Pages" });
    // Its button stands in what is folded away, so that no role finds it yet.
    this.you = page.getByRole("banner").locator("details", { has: page.locator("form[action='/sign-out']") });
    this.steps = page.getByRole("region", { name: "What comes next" }).getByRole("link");
  }

  async open(club: string): Promise<this> {
    await this.page.goto(`/club/${club}`);
    return this;
  }

  /** For who belongs to several clubs: the choice after signing in. */
  async choose(clubName: string): Promise<void> {
    await this.page.getByRole("heading", { name: "Your clubs" }).waitFor();
    await this.page.getByRole("link", { name: clubName, exact: true }).click();
  }

  async goTo(place: "Today" | "Register" | "Events"): Promise<void> {
    await this.places.getByRole("link", { name: place }).click();
  }

  async signOut(): Promise<void> {
    await this.you.locator("summary").click();
    await this.you.getByRole("button", { name: "Sign out" }).click();
  }
}
