import type { Locator, Page } from "@playwright/test";
import { answeredWith } from "./complaint";
import { CarPage } from "./pages/car.page";
import { SignInPage } from "./pages/sign-in.page";
import { unsoundness } from "./pages/soundness";
import { DraftPage } from "./pages/submission.page";
import { expect, password, people, test } from "./world";

const club = "/club/sandvaer";
/** A phone, and a desk. */
const screens = [
  { width: 360, height: 740 },
  { width: 1440, height: 900 },
] as const;

const pages = {
  anybody: ["/sign-in", "/sign-in?refused=wrong&email=someone%40demo.test", "/invitation/none", "/nothing"],
  registrar: [
    club,
    `${club}/car`,
    `${club}/car?q=zz+9999`,
    `${club}/car/S3-0237`,
    `${club}/car/S1-0004?against=asBuilt`,
    `${club}/car/S2-0145~2`,
    `${club}/car/S9-9999`,
    `${club}/event`,
    `${club}/event/kvitnes-track-day`,
    "/club/grusvik",
    `${club}/fleet`,
    `${club}/fleet/characteristic/front.camber`,
    `${club}/fleet/characteristic/front.disc.face?series=series-2&value=drilled`,
    `${club}/fleet/modification`,
    `${club}/fleet/compare?cars=S2-0145,S3-0237,S1-0004`,
    `${club}/fleet/survival`,
    `${club}/fleet/due`,
    `${club}/fleet/due/calendar`,
    `${club}/fleet/due/link`,
    `${club}/fleet/part`,
    `${club}/car/S3-0237/others`,
    `${club}/review`,
    `${club}/new-part`,
    `${club}/part/windscreen-coupe/change`,
  ],
  /** Everything an owner of S3-0338 comes to: prisma/demo/keeper.ts. */
  owner: [
    `${club}/garage`,
    `${club}/car/S3-0338/change?assembly=brakes`,
    `${club}/car/S3-0338/setting`,
    `${club}/car/S3-0338/setting/new`,
    `${club}/car/S3-0338/setting/new?found=yes`,
    `${club}/car/S3-0338/plan`,
    `${club}/car/S3-0338/roll`,
    `${club}/notice`,
    `${club}/part`,
    `${club}/part/windscreen-coupe`,
    `${club}/instrument`,
    `${club}/car/S3-0338/change?find=bar`,
  ],
  scrutineer: ["/", `${club}/event/kvitnes-track-day/paddock`],
} as const;

async function expectSound(page: Page, paths: readonly string[]): Promise<void> {
  const found: string[] = [];
  for (const path of paths) {
    await page.goto(path);
    for (const screen of screens) {
      await page.setViewportSize(screen);
      found.push(...(await unsoundness(page)).map((fault) => `${path} at ${screen.width} px: ${fault}`));
    }
  }
  expect(found).toEqual([]);
}

const rule = "scrolls sideways, lacks its heading or has a control without a name, on a phone or a desk";

test(`no page for anybody ${rule}`, async ({ page, complaints }) => {
  complaints.allow(answeredWith(404));
  await expectSound(page, pages.anybody);
});

for (const who of ["registrar", "owner", "scrutineer"] as const) {
  test.describe(`for the ${who}`, () => {
    test.use({ as: who });

    test(`no page of the ${who} ${rule}`, async ({ page }) => {
      await expectSound(page, pages[who]);
    });
  });
}

/** The page as it stands, on both screens. */
async function expectSoundHere(page: Page, what: string): Promise<void> {
  for (const screen of screens) {
    await page.setViewportSize(screen);
    expect(await unsoundness(page), `${what} at ${screen.width} px`).toEqual([]);
  }
}

test.describe("a draft with two changes", () => {
  test.use({ as: "owner" });

  test(`neither as it is typed, nor with what is wrong, nor the working of a consequence ${rule}`, async ({
    page,
  }) => {
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.write("On it now", "22 mm");
    await page.getByText("Add another part").click();
    await page.getByLabel("Or look for it by name").fill("front disc face");
    await page.getByRole("checkbox", { name: "Front disc face", exact: true }).check();
    await page.getByRole("button", { name: "Add them as another change" }).click();
    await expect(page.getByRole("heading", { name: "Change 2: what was changed" })).toBeVisible();
    await page.getByRole("button", { name: "Add a fastener" }).first().click();
    await page.getByLabel("Thread", { exact: true }).fill("M10x");
    await expectSoundHere(page, "the draft");
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByText("Not handed in yet")).toBeVisible();
    await expect(page.getByLabel("Thread", { exact: true })).toHaveAttribute("aria-invalid", "true");
    await expectSoundHere(page, "the draft with what is wrong");
    await draft.saved();
    await page
      .getByRole("link", { name: /^Working:/ })
      .first()
      .click();
    await expect(page).toHaveURL(/\/consequence\//);
    await expect(page.getByRole("columnheader", { name: "Before the change" })).toBeVisible();
    await expectSoundHere(page, "the working");
    await page.getByRole("link", { name: "The change" }).click();
    await page.getByRole("button", { name: "Withdraw" }).click();
    await expect(page.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
    await expectSoundHere(page, "the withdrawn change");
  });

  test("is typed, mended and withdrawn with the keyboard alone, the wrong field one press from its list", async ({
    page,
  }) => {
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.write("Fitted", "14 Nov 2026");
    const field = page.getByLabel("On it now").first();
    await page.getByRole("heading", { level: 1 }).click();
    await tabTo(page, field, 60);
    await page.keyboard.type("40 kg");
    await tabTo(page, page.getByRole("button", { name: "Hand in" }), 60);
    await page.keyboard.press("Enter");
    const list = page.getByRole("alert").first();
    await expect(list).toContainText(/to be put right/);
    // The list has the focus; its links lead to the fields.
    await tabTo(page, list.getByRole("link").first(), 3);
    await page.keyboard.press("Enter");
    await expect(field).toBeFocused();
    await expect(field).toHaveAttribute("aria-invalid", "true");
    await tabTo(page, page.getByRole("button", { name: "Withdraw" }), 60);
    await page.keyboard.press("Enter");
    await expect(page.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
  });
});

test("the look at a page finds what it looks for", async ({ page }) => {
  await page.setContent(`
    <h1>One</h1><h1>Two</h1><button></button><a href="#x"><svg></svg></a><input type="search">
    <input aria-label="Bore" aria-invalid="true" name="bore"><input aria-label="Arm" aria-describedby="none">
    <svg role="img"></svg><i id="a"></i><i id="a"></i><div style="width: 9000px">wide</div>`);
  const found = await unsoundness(page);
  for (const fault of [
    /^scrolls sideways by \d+ px$/,
    /^sticks out to the right: div: wide$/,
    /^two elements have the id a$/,
    /^2 headings of the first level$/,
    /^does not say its language$/,
    /^has no title$/,
    /^leads nowhere: aria-describedby to none$/,
    /^bore is said to be wrong, and not why$/,
    /^has no name: - button/,
    /^has no name: - link/,
    /^has no name: - searchbox/,
    /^has no name: - img/,
  ]) {
    expect(found).toContainEqual(expect.stringMatching(fault));
  }
});

/** Presses Tab until the element has the focus; as often as given at most. */
async function tabTo(page: Page, element: Locator, most: number): Promise<void> {
  for (let pressed = 0; pressed < most; pressed++) {
    await page.keyboard.press("Tab");
    if (await element.evaluate((one) => one === one.ownerDocument.activeElement)) return;
  }
  await expect(element, `has the focus within ${most} presses of Tab`).toBeFocused();
}

async function skipToContent(page: Page): Promise<void> {
  const skip = page.getByRole("link", { name: "Skip to the content" });
  await expect(skip).not.toBeInViewport();
  await page.keyboard.press("Tab");
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main")).toBeFocused();
}

test("signing in takes the keyboard alone, and shows where one is", async ({ page }) => {
  const form = await new SignInPage(page).open();
  await skipToContent(page);
  await tabTo(page, form.email, 2);
  await expect(form.email).toHaveCSS("outline-style", "solid");
  await page.keyboard.type(people.owner.email);
  await tabTo(page, form.password, 1);
  await page.keyboard.type(password);
  await tabTo(page, form.button, 1);
  await expect(form.button).toHaveCSS("outline-style", "solid");
  await page.keyboard.press("Enter");
  await page.waitForURL("/club/sandvaer");
});

test.describe("for the owner", () => {
  test.use({ as: "owner" });

  test("the keyboard passes over the frame, reaches the plan's leaders in walking order and jumps to an assembly", async ({
    page,
  }) => {
    const car = await new CarPage(page).open("sandvaer", "S3-0237");
    await skipToContent(page);
    // The way back, the plate's copy button, then the first leader.
    await tabTo(page, car.leader("Front suspension"), 3);
    await tabTo(page, car.leader("Steering"), 1);
    await tabTo(page, car.leader("Rear suspension"), 1);
    await tabTo(page, car.leader("Brakes"), 1);
    // On a drawing the focus is told by the ring's line.
    const ring = (assembly: string) => car.leader(assembly).locator(".plan-leader-ring");
    await expect(ring("Brakes")).toHaveCSS("stroke-width", "3px");
    await expect(ring("Steering")).not.toHaveCSS("stroke-width", "3px");
    await page.keyboard.press("Enter");
    await expect(page).toHaveURL(/#assembly-brakes$/);
    await expect(car.assembly("Brakes")).toBeInViewport();
  });

  test("the keyboard opens the menu, and it signs out", async ({ page }) => {
    await page.goto("/club/sandvaer/event");
    const summary = page.getByRole("banner").locator("summary");
    await tabTo(page, summary, 9);
    await page.keyboard.press("Enter");
    await tabTo(page, page.getByRole("button", { name: "Sign out" }), 1);
  });
});
