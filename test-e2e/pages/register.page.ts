import { expect, type Locator, type Page } from "@playwright/test";

/** Columns of the list, as its headings name them. */
const columns = ["chassis", "series", "built", "colour", "registration", "status"] as const;
type Column = (typeof columns)[number];

export class RegisterPage {
  readonly search: Locator;
  readonly narrowedBy: Locator;
  readonly rows: Locator;
  readonly next: Locator;
  readonly first: Locator;
  readonly nothing: Locator;

  constructor(readonly page: Page) {
    this.search = page.getByRole("searchbox", { name: "Find a car" });
    this.narrowedBy = page.getByRole("list", { name: "Narrowed by" }).getByRole("link");
    this.rows = page.getByRole("table", { name: "Cars of the register" }).locator("tbody tr");
    this.next = page.getByRole("link", { name: "Next" });
    this.first = page.getByRole("link", { name: "From the beginning" });
    this.nothing = page.getByText("No car fits.");
  }

  async open(club: string): Promise<this> {
    await this.page.goto(`/club/${club}/car`);
    return this;
  }

  /** Asks for cars, and waits for the answer. */
  async find(text: string): Promise<void> {
    await this.search.fill(text);
    await this.page.getByRole("button", { name: "Find" }).click();
    await this.page.waitForURL((url) => url.searchParams.get("q") === text);
    await this.answered(text);
  }

  async choose(series: string): Promise<void> {
    await this.pick("Series", series);
    await expect(this.narrowedBy.filter({ hasText: series })).toHaveCount(1);
    await this.settled();
  }

  /** Waits until all of an answer is there: its first rows come at once, how many there are is told with the last. */
  async settled(): Promise<void> {
    await expect(this.page.locator(".found")).toHaveAttribute("aria-busy", "false");
  }

  /** Waits until what is shown is what these words find. */
  async answered(text: string): Promise<void> {
    await expect(this.page.locator("#found > [data-asked]")).toHaveAttribute("data-asked", text);
  }

  /** Picks a kind by its count. */
  async pick(kind: string, label: string): Promise<void> {
    const counts = this.page.locator("details.facets");
    // Where there is no room for them beside the list they are opened first.
    const section = counts.getByRole("region", { name: kind });
    if (!(await section.isVisible())) await counts.locator("summary").click();
    await section.getByRole("link", { name: new RegExp(`^${label}`) }).click();
  }

  /** "4 cars found", "412 cars". */
  lead(): Locator {
    return this.page.locator("#found-told");
  }

  /** One column of the rows shown, as text, once all of them are there. */
  async column(name: Column): Promise<readonly string[]> {
    await this.settled();
    const cells = this.rows.locator(`> :nth-child(${columns.indexOf(name) + 1})`);
    return (await cells.allInnerTexts()).map((text) => text.trim());
  }

  /** Chassis numbers of the rows shown, each with its claim where it has one: "S2-0145 claim 2". */
  async chassis(): Promise<readonly string[]> {
    return (await this.column("chassis")).map((text) => text.replace(/\s+/g, " "));
  }

  /** The box that ticks a car for a comparison. */
  tick(reference: string): Locator {
    return this.page.getByRole("checkbox", { name: `Tick ${reference}`, exact: true });
  }

  car(chassis: string): Locator {
    return this.rows.getByRole("link", { name: chassis, exact: true });
  }
}
