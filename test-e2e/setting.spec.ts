import { unsoundness } from "./pages/soundness";
import { expect, test } from "./world";

test.use({ as: "registrar" });

const car = "/club/sandvaer/car/S1-0002";

test("a setting sheet with an impossible reading is told at its field, loses nothing, and is handed in once mended", async ({
  page,
}) => {
  await page.goto(`${car}/setting/new?found=yes`);
  const front = page.getByRole("group", { name: "Front camber", exact: true });
  await front.getByLabel(/^(Left|Nearside), as left$/).fill("40°");
  await front.getByLabel(/^(Right|Offside), as left$/).fill("-0°20'; -0°22'");
  await front.getByLabel(/^(Left|Nearside), as found$/).fill("0°35'");
  await page.getByLabel("Note").fill("On the flat floor of the garage");
  // The drawing answers while one types: the right wheel leans in.
  await expect(
    page.getByRole("img", { name: /Camber of the front axle.*(right|offside) top leans in/ }),
  ).toBeVisible();

  await page.getByRole("button", { name: "Hand in this sheet" }).click();
  const wrong = front.getByLabel(/^(Left|Nearside), as left$/);
  await expect(wrong).toHaveAttribute("aria-invalid", "true");
  await expect(wrong).toHaveAccessibleDescription(/too large to be believed/);
  await expect(wrong).toHaveValue("40°");
  await expect(page.getByLabel("Note")).toHaveValue("On the flat floor of the garage");

  await wrong.fill("-0°18'");
  await page.getByRole("button", { name: "Hand in this sheet" }).click();
  await expect(page.getByRole("status").filter({ hasText: "The sheet is handed in" })).toBeVisible();
});

test("a sheet begun and left with a closed tab is there again, until it is handed in", async ({
  page,
  context,
}) => {
  await page.goto(`${car}/setting/new`);
  const camber = (at: typeof page) =>
    at.getByRole("group", { name: "Rear camber", exact: true }).getByLabel(/^(Left|Nearside)$/);
  await camber(page).fill("-0°44'");
  await page.close();
  const again = await context.newPage();
  await again.goto(`${car}/setting/new`);
  await expect(camber(again)).toHaveValue("-0°44'");
  await expect(again.getByText("What you had begun here is back: one entry.")).toBeVisible();
  await again.getByRole("button", { name: "Hand in this sheet" }).click();
  await expect(again.getByRole("status").filter({ hasText: "The sheet is handed in" })).toBeVisible();
  await again.goto(`${car}/setting/new`);
  await expect(camber(again)).toHaveValue("");
});

test("an instrument of one's own is put on the books from the form, chosen, and nothing typed is lost", async ({
  page,
}) => {
  const name = `Gravity gauge ${Date.now() % 1_000_000}`;
  await page.goto(`${car}/setting/new`);
  const front = page.getByRole("group", { name: "Front camber", exact: true });
  await front.getByLabel(/^(Left|Nearside)$/).fill("-0°10'");
  await page.getByText("Another instrument, the club's or your own").click();
  await page.getByLabel("What it is").fill(name);
  await page.getByLabel("It reads").selectOption("angle");
  await page.getByLabel("Smallest step it shows").fill("0°05'");
  await page.getByLabel("Uncertainty", { exact: true }).fill("0°01'");
  await page.getByRole("button", { name: "Put it on the books" }).click();
  const uncertainty = page.getByLabel("Uncertainty", { exact: true });
  await expect(uncertainty).toHaveAttribute("aria-invalid", "true");
  await expect(uncertainty).toHaveAccessibleDescription(/finer than half of its smallest step/);
  await uncertainty.fill("0°10'");
  await page.getByRole("button", { name: "Put it on the books" }).click();
  await expect(page.getByRole("status").filter({ hasText: "on the club's books" })).toBeVisible();
  await expect(page.getByLabel("Angles").locator("option:checked")).toHaveText(
    `${name}: steps of 5', ±10' (k = 2)`,
  );
  await expect(front.getByLabel(/^(Left|Nearside)$/)).toHaveValue("-0°10'");
  await page.getByRole("button", { name: "Hand in this sheet" }).last().click();
  await expect(page.getByRole("status").filter({ hasText: "The sheet is handed in" })).toBeVisible();
});

test("an instrument is corrected and taken out of use at the desk, and is offered no more", async ({
  page,
}) => {
  const name = `Pressure gauge ${Date.now() % 1_000_000}`;
  await page.goto(`${car}/setting/new`);
  await page.getByText("Another instrument, the club's or your own").click();
  await page.getByLabel("What it is").fill(name);
  await page.getByLabel("It reads").selectOption("pressure");
  await page.getByLabel("Smallest step it shows").fill("1 psi");
  await page.getByRole("button", { name: "Put it on the books" }).click();
  await expect(page.getByLabel("Pressures")).toContainText(`${name}: steps of`);
  await page.goto("/club/sandvaer/instrument");
  await page.getByRole("link", { name }).click();
  await page.getByLabel("Its number").fill("SN 204");
  await page.getByLabel("Calibration good until").fill("2024-01-31");
  await page.getByRole("button", { name: "Save" }).click();
  await expect(page.getByText("Saved.")).toBeVisible();
  await expect(page.getByText(/its calibration has run out/)).toBeVisible();
  expect(await unsoundness(page)).toEqual([]);
  await page.getByText("Take it out of use", { exact: true }).first().click();
  await page.getByLabel("Why").fill("dropped");
  await page.getByRole("button", { name: "Take it out of use" }).click();
  await expect(page.getByText("Out of use: dropped")).toBeVisible();
  await page.getByRole("link", { name: "Instruments" }).first().click();
  await expect(page.getByRole("region", { name: "Out of use" })).toContainText(name);
  await page.goto(`${car}/setting/new`);
  await expect(page.getByText("What is on the books")).toBeVisible();
  await expect(page.getByRole("option", { name: new RegExp(name) })).toHaveCount(0);
});

test("a pasted table fills the places that are still empty, and says what it could not place", async ({
  page,
}) => {
  await page.goto(`${car}/setting/new`);
  const front = page.getByRole("group", { name: "Front camber", exact: true });
  await front.getByLabel(/^(Left|Nearside)$/).fill("-0°10'");
  await page.getByText("Take readings from a table").click();
  await page
    .getByLabel("The table, pasted or as CSV")
    .fill("Setting\tLeft\tRight\nFront camber\t-0°30'\t-0°20'\nFront cambre\t1°\t1°\n");
  await page.getByRole("button", { name: "Put the table into the form" }).click();
  await expect(front.getByLabel(/^(Right|Offside)$/)).toHaveValue("-0°20'");
  await expect(front.getByLabel(/^(Left|Nearside)$/)).toHaveValue("-0°10'");
  const summary = page.getByRole("alert").or(page.getByRole("main")).first();
  await expect(summary).toContainText('"Front cambre" is no setting');
});

test("the words for the sides are the reader's choice, and stay", async ({ page }) => {
  await page.goto(`${car}/setting`);
  const other = page.getByRole("button", { name: /^Say (nearside and offside|left and right)$/ });
  const word = (await other.textContent())?.includes("nearside") ? "Nearside" : "Left";
  await other.click();
  const heading = page.getByRole("columnheader", { name: word, exact: true }).first();
  await expect(heading).toBeVisible();
  await page.reload();
  await expect(heading).toBeVisible();
});

const corner = {
  track: "1300 mm",
  radius: "285 mm",
  camber: "-0°30'",
  toe: "toe-in 6' per side",
  ...Object.fromEntries(
    Object.entries({
      lowerArmFront: [135, 240, 190],
      lowerArmRear: [-125, 245, 184],
      lowerJoint: [6, 600, 165],
      upperArmFront: [80, 310, 402],
      upperArmRear: [-110, 312, 395],
      upperJoint: [-12, 568, 418],
      tieRodInner: [-118, 258, 213],
      tieRodOuter: [-128, 584, 201],
    }).flatMap(([name, [x, y, z]]) => [
      [`${name}-x`, `${x}`],
      [`${name}-y`, `${y}`],
      [`${name}-z`, `${z}`],
    ]),
  ),
  "upperJoint-pitch": "1.5 mm",
  "upperJoint-step": "1/2",
  "upperJoint-in": "4",
  "upperJoint-out": "4",
  "tieRod-pitch": "1/14 in",
  "tieRod-step": "1/12",
  "tieRod-in": "6",
  "tieRod-out": "6",
};

test("a plan names each figure that lacks, and once whole gives steps, readings and a page to print", async ({
  page,
}) => {
  await page.goto(`${car}/plan`);
  await page.getByLabel("Camber wanted").fill("-1°0'");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(page.getByRole("main")).toContainText(/figures? stand/);
  await expect(page.getByLabel("Camber wanted")).toHaveValue("-1°0'");

  const query = new URLSearchParams({
    ...corner,
    side: "left",
    wantedCamber: "-1°0'",
    wantedToe: "toe-in 8' per side",
  });
  await page.goto(`${car}/plan?${query}`);
  await expect(page.getByRole("status").filter({ hasText: "within its tolerance" })).toBeVisible();
  await expect(page.getByRole("rowheader", { name: /upper ball joint/ })).toBeVisible();
  const href = await page.getByRole("link", { name: "Print it for the garage" }).getAttribute("href");
  const pdf = await page.request.get(href ?? "");
  expect(pdf.headers()["content-type"]).toBe("application/pdf");
  const refused = await page.request.get(`/api${car}/plan.pdf`);
  expect(refused.status()).toBe(409);
});

const study = {
  "front-track": "1300 mm",
  "front-mass": "400 kg",
  "front-unsprungMass": "60 kg",
  "front-unsprungHeight": "290 mm",
  "front-rollCentreHeight": "50 mm",
  "front-springRate": "95 lb/in",
  "front-motionRatio": "0.9",
  "front-barWheelRate": "8 N/mm",
  "rear-track": "1280 mm",
  "rear-mass": "420 kg",
  "rear-unsprungMass": "75 kg",
  "rear-unsprungHeight": "290 mm",
  "rear-rollCentreHeight": "120 mm",
  "rear-springRate": "17 N/mm",
  "rear-motionRatio": "1",
  "rear-barWheelRate": "0",
  cgHeight: "450 mm",
};

test("a slider moved by the keyboard is answered in the table, and the car as it stands stays beside it", async ({
  page,
}) => {
  await page.goto(`${car}/roll?${new URLSearchParams(study)}`);
  const roll = (name: string) =>
    page
      .getByRole("row", { name: new RegExp(`^${name}`) })
      .getByRole("cell")
      .first();
  const before = await roll("as it stands").textContent();
  await expect(roll("as moved")).toHaveText(before ?? "");
  const slider = page.getByRole("slider", { name: "Front bar at the wheel" });
  await slider.focus();
  await slider.press("End");
  await expect(roll("as moved")).not.toHaveText(before ?? "");
  await expect(roll("as it stands")).toHaveText(before ?? "");
});
