import type { Locator, Page } from "@playwright/test";

const sections = {
  filed: "Filed under",
  facts: "Dates and remarks",
  identity: "Numbers and marks",
  status: "Status",
  keeper: "Keepers",
  asBuilt: "As-built values",
  note: "Notes of its history",
} as const;

/** A car's record row by row, and the forms over it. */
export class RecordPage {
  /** What came of sending a form: refused, or what is wrong where. */
  readonly trouble: Locator;
  /** What both people made of it. */
  readonly conflict: Locator;

  constructor(readonly page: Page) {
    this.trouble = page.getByRole("main").getByRole("alert");
    this.conflict = page.getByRole("table", { name: "What stands now, and what you want" });
  }

  async open(club: string, reference: string): Promise<this> {
    await this.page.goto(`/club/${club}/car/${encodeURIComponent(reference)}/edit`);
    return this;
  }

  section(name: keyof typeof sections): Locator {
    return this.page.getByRole("region", { name: sections[name], exact: true });
  }

  /** Follows a link of a section: "Add a status", "Correct AB 1". */
  async follow(section: keyof typeof sections, link: string | RegExp): Promise<void> {
    await this.section(section).getByRole("link", { name: link }).click();
    await this.page.waitForURL(/\/(edit\/|correct)/);
  }

  field(label: string): Locator {
    return this.page.getByLabel(label, { exact: true }).first();
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole("button", { name });
  }

  /** Sends the form and waits for the record it leads back to. */
  async save(button: string | RegExp): Promise<void> {
    await this.button(button).click();
    await this.page.waitForURL(/\/edit(#\w[\w-]*)?$/);
  }
}

/** Adds a car by the form; tells the reference in its address. */
export async function addCar(
  page: Page,
  club: string,
  particulars: Readonly<Record<string, string>>,
  { another = false }: { readonly another?: boolean } = {},
): Promise<string> {
  await page.goto(`/club/${club}/add-car`);
  for (const [label, value] of Object.entries(particulars)) {
    const field = page.getByLabel(label, { exact: true });
    if (label === "Series" || label === "Status") await field.selectOption({ label: value });
    else await field.fill(value);
  }
  if (another) await page.getByLabel("Another car that claims this number").check();
  await page.getByRole("button", { name: "Add the car" }).click();
  await page.waitForURL(/\/car\/[^/]+$/);
  return decodeURIComponent(new URL(page.url()).pathname.split("/").at(-1) ?? "");
}
