import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./world";

test.use({ as: "registrar" });

const club = "/club/sandvaer/car";

/** An adjuster of the plan's form, opened where it is shut. */
async function adjuster(page: Page, title: string): Promise<Locator> {
  const group = page.getByRole("group", { name: title, exact: true });
  if (!(await group.isVisible())) await page.getByText(title, { exact: true }).first().click();
  await expect(group).toBeVisible();
  return group;
}

async function fill(group: Locator, figures: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(figures)) await group.getByLabel(label).fill(value);
}

async function printed(page: Page): Promise<void> {
  const href = await page.getByRole("link", { name: "Print it for the garage" }).getAttribute("href");
  const pdf = await page.request.get(href ?? "");
  expect(pdf.headers()["content-type"]).toBe("application/pdf");
  expect((await pdf.body()).subarray(0, 5).toString()).toBe("%PDF-");
}

test("a strut front is planned from its record: top mount in its slots, then the track rod", async ({
  page,
}) => {
  await page.goto(`${club}/S4-0189/plan`);
  await page.getByLabel("Camber wanted").fill("-1°0'");
  await page.getByLabel("Castor wanted").fill("4°30'");
  await page.getByLabel("Toe of this wheel wanted").fill("toe-in 5' per side");
  const room = { "Least that can be set, mm": "1" };
  await fill(await adjuster(page, "Top mount in slots across the car"), {
    ...room,
    "Room left inboard, mm": "12",
    "Room left outboard, mm": "6",
  });
  await fill(await adjuster(page, "Top mount in slots along the car"), {
    ...room,
    "Room left rearwards, mm": "10",
    "Room left forwards, mm": "10",
  });
  await fill(await adjuster(page, "Track rod end"), {
    "Movement per turn, mm": "1.5",
    "Least that can be set, turns": "1/6",
    "Turns allowed shorter, or inboard": "6",
    "Turns allowed longer, or outboard": "6",
  });
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(page.getByRole("status").filter({ hasText: "within its tolerance" })).toBeVisible();
  const steps = page.getByRole("rowheader");
  await expect(steps.filter({ hasText: "cross slots" })).toContainText(/\d mm inboard/);
  await expect(steps.filter({ hasText: "track rod end" })).toContainText(/turns? (shorter|longer)/);
  await expect(steps.last()).toHaveText("Left over: reached less wanted");
  await printed(page);
});

test("a semi-trailing arm has no castor to ask for, and what is only specified is not taken for a reading", async ({
  page,
}) => {
  await page.goto(`${club}/S4-0133/plan`);
  await page.getByRole("link", { name: "Rear wheels" }).click();
  await expect(page.getByLabel("Castor wanted")).toHaveCount(0);
  await page.getByLabel("Camber wanted").fill("-0°20'");
  await fill(await adjuster(page, "Eccentric bolt of the trailing arm's outer pivot"), {
    "Eccentricity, mm": "5",
    "Where its mark stands now, °": "0",
    "Least that can be set, °": "15",
  });
  await page
    .getByRole("group", { name: "Eccentric bolt of the trailing arm's outer pivot", exact: true })
    .getByLabel("Passing the middle it moves")
    .selectOption("up");
  await page.getByRole("button", { name: "Plan it" }).click();
  const toe = page.getByLabel("Toe of this wheel now");
  await expect(toe).toHaveAttribute("aria-invalid", "true");
  await expect(toe).toHaveAccessibleDescription(/Specified: .* not on the record/);
  await toe.fill("toe-in 8' per side");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(
    page.getByRole("rowheader", { name: /outer pivot's eccentric from 0° to .*\((up|down)\)/ }),
  ).toBeVisible();
  await expect(page.getByRole("heading", { name: /^The rear left wheel, in this order/ })).toBeVisible();
  await printed(page);
});

test("a swing axle is set by the shims of its radius arm", async ({ page }) => {
  await page.goto(`${club}/S1-0083/plan?axle=rear`);
  await page.getByLabel("Toe of this wheel wanted").fill("toe-in 10' per side");
  await page.getByLabel("Toe of this wheel now").fill("0' per side");
  await fill(await adjuster(page, "Shims under the radius arm's chassis pivot"), {
    "Thickness of one shim, mm": "1",
    "Fitted now": "3",
    "Most there is room for": "8",
  });
  await page.getByLabel("A shim moves it").selectOption("outboard");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(
    page.getByRole("rowheader", { name: /shims? (out )?at radius arm's chassis pivot/ }),
  ).toBeVisible();
  await printed(page);
});

test("of a live axle it is said why nothing is planned", async ({ page }) => {
  await page.goto(`${club}/S3-0338/plan?axle=rear`);
  await expect(page.getByRole("main")).toContainText("Rear wheels: live axle on links.");
  await expect(page.getByRole("main")).toContainText("camber and toe are made with it and cannot be set");
  await expect(page.getByRole("button", { name: "Plan it" })).toHaveCount(0);
});
