import type { Locator, Page } from "@playwright/test";

type Baseline = "specification" | "as built";

export class CarPage {
  readonly plate: Locator;
  readonly identity: Locator;
  readonly plan: Locator;
  readonly legend: Locator;
  readonly compareWith: Locator;
  readonly copy: Locator;

  constructor(readonly page: Page) {
    this.plate = page.locator(".plate");
    this.identity = page.getByRole("region", { name: "Identity" });
    this.plan = page.getByRole("navigation", { name: "Assemblies, on the plan" });
    this.legend = page.getByRole("list", { name: "Assemblies" });
    this.compareWith = page.getByRole("navigation", { name: "Compare with" });
    this.copy = page.getByRole("button", { name: /^Copy/ });
  }

  async open(club: string, reference: string): Promise<this> {
    await this.page.goto(`/club/${club}/car/${encodeURIComponent(reference)}`);
    return this;
  }

  differences(from: Baseline): Locator {
    return this.page.getByRole("table", { name: `What differs from ${from}, worst first` });
  }

  /** What differs, one text a row, its cells parted by " | "; empty ones left out. */
  async lines(from: Baseline): Promise<readonly string[]> {
    const rows = await this.differences(from).locator("tbody tr").all();
    const told = rows.map(async (row) => {
      const cells = await row.locator("th, td:not(.value-known)").allTextContents();
      return cells
        .map(inWords)
        .filter((cell) => cell !== "")
        .join(" | ");
    });
    return Promise.all(told);
  }

  /** A leader of the plan by the name of its assembly. */
  leader(assembly: string): Locator {
    return this.plan.getByRole("link", { name: new RegExp(`^\\d+ ${assembly}: `) });
  }

  assembly(name: string): Locator {
    return this.page.getByRole("region", { name: new RegExp(`^\\d+\\s*${name}$`) });
  }
}

/** The words of a cell, without the label that stands before it on a narrow screen. */
function inWords(text: string): string {
  return text
    .replace(/^(Specified|As built|On the car)/, "")
    .replace(/^(\d+)(?=[A-Z])/, "$1 ")
    .replace(/\s+/g, " ")
    .trim();
}
