import { RegisterPage } from "./pages/register.page";
import { expect, test } from "./world";

test.use({ as: "registrar" });

/** Requests of the page itself made while typing, each held until it is let go. */
async function holdAnswers(register: RegisterPage) {
  const held: { readonly q: string; readonly letGo: () => void }[] = [];
  const aborted: string[] = [];
  const asked = (url: string) => new URL(url).searchParams.get("q") ?? "";
  register.page.on("requestfailed", (request) => {
    if (request.resourceType() === "fetch") aborted.push(asked(request.url()));
  });
  await register.page.route("**/club/sandvaer/car?*", async (route) => {
    if (route.request().resourceType() !== "fetch") return route.continue();
    await new Promise<void>((letGo) => {
      held.push({ q: asked(route.request().url()), letGo });
    });
    // One that was broken off meanwhile has nobody to answer.
    await route.continue().catch(() => undefined);
  });
  return { held, aborted };
}

test("list, counts and address follow as one types, and nothing typed is lost", async ({ page }) => {
  const register = await new RegisterPage(page).open("sandvaer");
  await register.search.pressSequentially("S3-0237");
  await expect(register.lead()).toHaveText("1 car found");
  expect(await register.chassis()).toEqual(["S3-0237"]);
  await expect(register.search).toHaveValue("S3-0237");
  await expect(register.search).toBeFocused();
  expect(new URL(page.url()).searchParams.get("q")).toBe("S3-0237");
  await expect(page.getByRole("region", { name: "Series", exact: true })).toContainText("Series 31");

  await register.search.press("Control+a");
  await register.search.press("Delete");
  await expect(register.lead()).toHaveText(/^4\d\d cars$/);
  expect(new URL(page.url()).search).toBe("");
});

test("how many were found is in a place that is read out when it changes", async ({ page }) => {
  const register = await new RegisterPage(page).open("sandvaer");
  await register.search.pressSequentially("ochre");
  await expect(page.getByRole("status").filter({ has: page.locator("#found-told") })).toHaveText(
    "50 cars found",
  );
});

test("the latest answer wins: what was asked before is broken off, and comes too late if it comes", async ({
  page,
}) => {
  const register = await new RegisterPage(page).open("sandvaer");
  const { held, aborted } = await holdAnswers(register);
  await register.search.pressSequentially("ochre");
  await expect.poll(() => held.map(({ q }) => q)).toContain("ochre");
  const first = held.length;
  await register.search.fill("S3-0237");
  await expect.poll(() => held.length).toBeGreaterThan(first);
  await expect.poll(() => aborted).toContain("ochre");
  for (const { letGo } of held) letGo();
  await expect(register.lead()).toHaveText("1 car found");
  expect(await register.chassis()).toEqual(["S3-0237"]);
});

test("where no answer comes that is said, the list stays, and one may type on", async ({
  page,
  complaints,
}) => {
  complaints.allow(/ERR_INTERNET_DISCONNECTED/);
  const register = await new RegisterPage(page).open("sandvaer");
  await register.search.pressSequentially("S3-0237");
  await expect(register.lead()).toHaveText("1 car found");
  await page.context().setOffline(true);
  await register.search.fill("ochre");
  await expect(page.getByText("The register does not answer")).toBeVisible();
  expect(await register.chassis()).toEqual(["S3-0237"]);
  await page.context().setOffline(false);
  await expect(register.lead()).toHaveText("50 cars found");
  await expect(page.getByText("The register does not answer")).toHaveCount(0);
});

test("Back goes to where one came from, and picks made on the way are gone through one by one", async ({
  page,
}) => {
  const register = new RegisterPage(page);
  await page.goto("/club/sandvaer");
  await register.open("sandvaer");
  await register.search.pressSequentially("ochre");
  await expect(register.lead()).toHaveText("50 cars found");
  await register.pick("Series", "Series 2");
  await expect(register.narrowedBy).toHaveText(["Take off: Series 2×"]);
  await register.settled();
  const narrowed = await register.lead().textContent();
  await register.pick("Status", "In use");
  await expect(register.narrowedBy).toHaveText(["Take off: Series 2×", "Take off: in use×"]);
  await expect(page.getByText("Cars of which")).toHaveText(
    "Cars of which the series is Series 2 and the status is in use.",
  );
  await page.goBack();
  await expect(register.narrowedBy).toHaveText(["Take off: Series 2×"]);
  await expect(register.lead()).toHaveText(narrowed ?? "");
  await page.goBack();
  await expect(register.lead()).toHaveText("50 cars found");
  await page.goBack();
  await page.waitForURL("/club/sandvaer");
});

test("a pick is taken off by its word, stays through typing, and is saved in a filter", async ({ page }) => {
  const register = await new RegisterPage(page).open("sandvaer");
  await register.pick("Status", "Laid up");
  await register.pick("Something is", "outside limits");
  await expect(register.narrowedBy).toHaveText(["Take off: laid up×", "Take off: something outside limits×"]);
  await register.search.pressSequentially("S2");
  await expect.poll(() => new URL(page.url()).searchParams.get("q")).toBe("S2");
  expect(new URL(page.url()).searchParams.get("where")).toBe("all2_status1_laidUp_anyVerdict1_outsideLimits");
  await register.narrowedBy.filter({ hasText: "laid up" }).click();
  await expect(register.narrowedBy).toHaveText(["Take off: something outside limits×"]);
  await expect(register.search).toHaveValue("S2");

  const name = `Outside ${Date.now() % 1e6}`;
  await page.reload();
  await page.getByText("Save this condition").click();
  await page.getByRole("textbox", { name: "Name" }).fill(name);
  await page.getByRole("button", { name: "Save the filter" }).click();
  await page.waitForURL((url) => url.searchParams.get("filter") === name);
  await expect(register.narrowedBy).toHaveText(["Take off: something outside limits×"]);
});

test("a column shown beside is in the file too, with the same cars in the same order", async ({ page }) => {
  const register = await new RegisterPage(page).open("sandvaer");
  // One key after another, a choice and a link in one breath: none of them is lost.
  await register.search.pressSequentially("amber");
  await page.getByRole("combobox", { name: "Show beside" }).selectOption({ label: "Front camber" });
  await page.getByRole("link", { name: "Most changed first" }).click();
  await expect(page.getByRole("columnheader", { name: "Front camber" })).toBeVisible();
  await expect(page.getByRole("columnheader", { name: /^Differs/ })).toHaveAttribute(
    "aria-sort",
    "descending",
  );
  const shown = await register.chassis();
  const href = await page.getByRole("link", { name: "These cars as CSV" }).getAttribute("href");
  const file = await (await page.request.get(href ?? "")).text();
  const [heading = "", ...rows] = file.trim().split("\r\n");
  expect(heading).toContain(",Front camber,");
  expect(rows.slice(0, shown.length).map((row) => row.split(",")[0])).toEqual(
    shown.map((chassis) => chassis.split(" claim")[0]),
  );
});

test("a characteristic shown beside puts the list in its order, both ways, and says so", async ({ page }) => {
  const register = await new RegisterPage(page).open("sandvaer");
  await page.getByRole("combobox", { name: "Show beside" }).selectOption({ label: "Front camber" });
  const heading = page.getByRole("columnheader", { name: "Front camber" });
  for (const [direction, first] of [
    ["ascending", /Front camber (-1°|neg )/],
    ["descending", /Front camber (0°|pos )/],
  ] as const) {
    await heading.getByRole("link").click();
    await expect(heading).toHaveAttribute("aria-sort", direction);
    await expect(page.getByRole("columnheader", { name: "Chassis" })).not.toHaveAttribute("aria-sort");
    await expect(heading.getByRole("link")).toBeFocused();
    await expect(register.rows.first().getByRole("cell").nth(5)).toHaveText(first);
  }
});

test("cards are kept for the next time, and the table again", async ({ page }) => {
  const register = await new RegisterPage(page).open("sandvaer");
  await page.getByRole("link", { name: "As cards" }).click();
  const cards = page.getByRole("list", { name: "Cars of the register" }).getByRole("article");
  await expect(cards).toHaveCount(50);
  await expect(cards.first().getByRole("link")).toHaveText("S1-0001");
  await register.open("sandvaer");
  await expect(cards).toHaveCount(50);
  await page.getByRole("link", { name: "As a table" }).click();
  await expect(register.rows).toHaveCount(50);
  await register.open("sandvaer");
  await expect(register.rows).toHaveCount(50);
});

test("cars ticked stay ticked while one looks for others, and are compared side by side", async ({
  page,
}) => {
  const register = await new RegisterPage(page).open("sandvaer");
  await register.search.pressSequentially("S2-0145");
  await expect(register.narrowedBy).toHaveCount(0);
  await register.answered("S2-0145");
  await register.tick("S2-0145").check();
  await register.search.fill("S3-0237");
  await register.answered("S3-0237");
  await register.tick("S3-0237").check();
  await expect(register.tick("S2-0145")).toHaveCount(0);
  // The first has left the list and stands by the button; back in the list it is ticked there.
  await expect(page.getByRole("checkbox", { name: "S2-0145", exact: true })).toBeChecked();
  await register.search.fill("S2-0145");
  await register.answered("S2-0145");
  await expect(register.tick("S2-0145")).toBeChecked();
  await expect(page.getByRole("checkbox", { name: "S2-0145", exact: true })).toHaveCount(0);
  await page.getByRole("button", { name: "Ticked cars side by side" }).click();
  await expect(page.getByRole("heading", { name: "Cars side by side", level: 1 })).toBeVisible();
  await expect(page.getByRole("textbox", { name: "Cars" })).toHaveValue(/^S[23]-0\d+, S[23]-0\d+$/);
});

test.describe("with scripts switched off", () => {
  test.use({ javaScriptEnabled: false });

  test("the form asks, picks narrow and a column is added, by plain addresses", async ({ page }) => {
    const register = await new RegisterPage(page).open("sandvaer");
    await register.pick("Series", "Series 2");
    await page.getByRole("combobox", { name: "Show beside" }).selectOption({ label: "Front camber" });
    await register.find("amber");
    await expect(register.narrowedBy).toHaveText(["Take off: Series 2×"]);
    await expect(page.getByRole("columnheader", { name: "Front camber" })).toBeVisible();
    for (const colour of await register.column("colour")) expect(colour.toLowerCase()).toContain("amber");
    await register.narrowedBy.click();
    await expect(register.narrowedBy).toHaveCount(0);
  });

  test("ticked cars are compared", async ({ page }) => {
    const register = await new RegisterPage(page).open("sandvaer");
    await register.find("S2-01");
    const [first = "", second = ""] = await register.chassis();
    await register.tick(first).check();
    await register.tick(second).check();
    await page.getByRole("button", { name: "Ticked cars side by side" }).click();
    await expect(page.getByText("2 cars", { exact: true }).first()).toBeVisible();
  });

  test("a heading puts the list in its order, page by page, the same cars in each", async ({ page }) => {
    const register = new RegisterPage(page);
    await page.goto("/club/sandvaer/car?col=front.camber");
    const heading = page.getByRole("columnheader", { name: "Front camber" }).getByRole("link");
    await heading.click();
    const first = await register.chassis();
    await register.next.click();
    await expect(register.first).toBeVisible();
    const second = await register.chassis();
    expect(second).toHaveLength(50);
    expect(second.filter((one) => first.includes(one))).toEqual([]);
    await heading.click();
    await expect(page.getByRole("columnheader", { name: "Front camber" })).toHaveAttribute(
      "aria-sort",
      "descending",
    );
    expect(await register.chassis()).not.toEqual(first);
  });
});
