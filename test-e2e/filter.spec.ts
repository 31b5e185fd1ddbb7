import { FilterPage } from "./pages/filter.page";
import { RegisterPage } from "./pages/register.page";
import { expect, test } from "./world";

test.use({ as: "registrar" });

/** How many cars there are of each answer, from the heads of the two lists. */
async function counted(register: RegisterPage): Promise<{ readonly fit: number; readonly unknown: number }> {
  await register.settled();
  const fit = Number.parseInt((await register.lead().textContent()) ?? "", 10);
  const more = register.page.getByText(/^Of [\d,]+ more cars? the record does not say/);
  if ((await more.count()) === 0) return { fit, unknown: 0 };
  const unknown = Number.parseInt(
    /Of ([\d,]+)/.exec((await more.textContent()) ?? "")?.[1]?.replace(",", "") ?? "",
    10,
  );
  return { fit, unknown };
}

const known = (page: RegisterPage) => page.page.getByText(/^Cars of which /);

test("a condition is put together in the form, said back in words, and every car is in one of its three lists", async ({
  page,
}) => {
  // The first hundred of Series 1, so that cars other tests add elsewhere do not count.
  const register = new RegisterPage(page);
  await page.goto("/club/sandvaer/car?q=S1-00");
  const all = Number.parseInt((await register.lead().textContent()) ?? "", 10);
  await page.getByRole("link", { name: "Filter by what is recorded" }).click();

  const form = new FilterPage(page);
  await form.characteristic("of.0", "Rear anti-roll bar diameter");
  await form.field("of.0.is").selectOption({ label: "is above" });
  await form.field("of.0.figure").fill("15 mm");
  await form.show.click();
  await page.waitForURL(
    (url) => url.searchParams.get("where") === "number_rear.antiRollBar.diameter_gt_0.015",
  );
  await expect(known(register)).toContainText("rear anti-roll bar diameter is above 15 mm");
  expect(new URL(page.url()).searchParams.get("q")).toBe("S1-00");
  const yes = await counted(register);
  expect(yes.fit).toBeGreaterThan(0);
  expect(yes.unknown).toBeGreaterThan(0);

  await page.goto("/club/sandvaer/car?q=S1-00&where=not_number_rear.antiRollBar.diameter_gt_0.015");
  const no = await counted(register);
  expect(no.unknown).toBe(yes.unknown);
  expect(yes.fit + no.fit + yes.unknown).toBe(all);

  await page.getByRole("link", { name: /^See (them|it)$/ }).click();
  await expect(register.lead()).toHaveText(/^\d+ cars? not known$/);
  await expect(page.getByText("Unknown is not a no")).toBeVisible();
});

test("groups within groups are added and taken away, and what cannot be read is told at its field", async ({
  page,
}) => {
  const form = await new FilterPage(page).open("sandvaer");
  await form.press("Add a group", 2);
  await form.characteristic("of.0", "front camber");
  await form.field("of.0.figure").fill("steep");
  await form.field("of.1.of.0.about").selectOption({ label: "Series" });
  await page.getByRole("checkbox", { name: "Series 2" }).check();
  await form.show.click();
  await expect(form.problems).toContainText("One thing is to be put right.");
  await expect(form.field("of.0.figure")).toHaveAttribute("aria-invalid", "true");
  await expect(form.field("of.0.figure")).toHaveValue("steep");
  await expect(page.getByRole("checkbox", { name: "Series 2" })).toBeChecked();

  await form.field("of.0.figure").fill("-1°30'");
  await form.press("Add a part", 3, 0);
  await form.press("Take this part away", 2, 2);
  await form.field("join").selectOption({ label: "none of these holds" });
  await form.show.click();
  await page.waitForURL((url) => url.searchParams.has("where"));
  await expect(page.getByText(/^Cars of which/)).toContainText(
    /not \(front camber is .* or the series is Series 2\)/,
  );
  await page.getByRole("link", { name: "Change the condition" }).click();
  await expect(form.parts).toHaveCount(2);
  await expect(form.field("join").locator("option:checked")).toHaveText("none of these holds");
});

test("a characteristic half remembered is found by its words", async ({ page }) => {
  const form = await new FilterPage(page).open("sandvaer");
  await form.field("of.0.characteristic").fill("anti roll rear diam");
  await page.getByRole("button", { name: "Look it up" }).click();
  await page.getByRole("button", { name: "Rear anti-roll bar diameter", exact: true }).click();
  await expect(form.field("of.0.characteristic")).toHaveValue("Rear anti-roll bar diameter");
  await expect(form.field("of.0.figure")).toBeVisible();
});

test("a condition goes together with the search and the series, and stays through them", async ({ page }) => {
  const register = new RegisterPage(page);
  await page.goto("/club/sandvaer/car?where=recorded_front.camber");
  const all = await counted(register);
  await register.choose("Series 2");
  expect(new URL(page.url()).searchParams.get("where")).toBe("all2_recorded_front.camber_series1_series-2");
  const some = await counted(register);
  expect(some.fit).toBeGreaterThan(0);
  expect(some.fit).toBeLessThan(all.fit);
  expect(new Set(await register.column("series"))).toEqual(new Set(["Series 2"]));
});

for (const [where, problem] of [
  ["number_rear.antiRollBar", "it was cut short"],
  ["dance_x", '"dance" is no part of a condition'],
  ["x".repeat(5_000), "at most 4000 are read"],
] as const) {
  test(`a broken condition in the address is told and shows no car: ${problem}`, async ({ page }) => {
    const register = new RegisterPage(page);
    await page.goto(`/club/sandvaer/car?where=${where}`);
    await expect(page.getByRole("main").getByRole("alert")).toContainText(problem);
    await expect(register.rows).toHaveCount(0);
    await page.getByRole("link", { name: "Take it off" }).click();
    await expect(register.rows).toHaveCount(50);
  });
}

test("a filter is saved under a name, shared, found by it in the address, renamed and taken away", async ({
  page,
  requestAs,
}) => {
  const name = `Stiff rear ${Date.now() % 1e6}`;
  const register = new RegisterPage(page);
  await page.goto("/club/sandvaer/car?where=number_rear.antiRollBar.diameter_gt_0.015");
  const { fit } = await counted(register);
  await page.getByText("Save this condition").click();
  await page.getByRole("textbox", { name: "Name" }).fill(name);
  await page.getByRole("checkbox", { name: "Share it with the club" }).check();
  await page.getByRole("button", { name: "Save the filter" }).click();
  await page.waitForURL((url) => url.searchParams.get("filter") === name);
  await expect(register.lead()).toHaveText(`${fit} cars found`);

  const other = await requestAs("scrutineer");
  const seen = await other.get(`/club/sandvaer/car?filter=${encodeURIComponent(name.toUpperCase())}`);
  expect(await seen.text()).toContain("rear anti-roll bar diameter is above 15 mm");

  await page.goto("/club/sandvaer/filter/saved");
  const item = page.getByRole("listitem").filter({ has: page.getByRole("link", { name }) });
  await item.getByText(`Change or take away “${name}”`).click();
  await item.getByRole("checkbox", { name: "Shared with the club" }).uncheck();
  await item.getByRole("button", { name: "Save", exact: true }).click();
  await expect(item.getByText("Yours alone.")).toBeVisible();
  const hidden = await other.get(`/club/sandvaer/car?filter=${encodeURIComponent(name)}`);
  expect(await hidden.text()).toContain("there is no filter");

  await page.goto("/club/sandvaer/filter/saved");
  await item.getByText(`Change or take away “${name}”`).click();
  await item.getByRole("button", { name: `Take “${name}” away` }).click();
  await expect(page.getByRole("link", { name })).toHaveCount(0);
});

test.describe("with scripts switched off", () => {
  test.use({ javaScriptEnabled: false });

  test("the form does the same", async ({ page }) => {
    const form = await new FilterPage(page).open("sandvaer");
    await form.characteristic("of.0", "body style");
    await page.getByRole("checkbox", { name: "Coupé", exact: true }).check();
    await form.press("Add a part", 2);
    await form.field("of.1.about").selectOption({ label: "When it was built" });
    await page.getByRole("button", { name: "Look it up" }).click();
    await form.field("of.1.figure").fill("1971");
    await form.field("of.1.until").fill("1972");
    await form.show.click();
    await page.waitForURL((url) => url.searchParams.has("where"));
    await expect(page.getByText(/^Cars of which/)).toContainText(
      "body style is coupé and built from 1 Jan 1971 to 31 Dec 1972",
    );
  });
});

test("the form is filled in from the keyboard alone: after each button one goes on where it leads", async ({
  page,
}) => {
  const form = await new FilterPage(page).open("sandvaer");
  await expect(form.parts).toHaveCount(1);
  await form.field("of.0.characteristic").focus();
  // A name is looked up by its button; before the script is there the page comes anew without it.
  await expect(async () => {
    await form.field("of.0.characteristic").fill("Front anti-roll bar diameter");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await expect(form.field("of.0.ask")).toBeFocused({ timeout: 2_000 });
  }).toPass();
  await page.keyboard.press("Tab");
  await page.keyboard.type("is above");
  await page.keyboard.press("Tab");
  await page.keyboard.type("16 mm");
  await page.getByRole("button", { name: "Add a part" }).focus();
  await page.keyboard.press("Enter");
  await expect(form.field("of.1.about")).toBeFocused();
  await page.getByRole("button", { name: "Take this part away" }).nth(1).focus();
  await page.keyboard.press("Enter");
  await expect(form.field("of.0.about")).toBeFocused();
  await form.field("of.0.figure").focus();
  await page.keyboard.press("Enter");
  await expect(page.getByText(/^Cars of which/)).toContainText("front anti-roll bar diameter is above 16 mm");
});
