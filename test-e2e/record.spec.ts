import { answeredWith } from "./complaint";
import { CarPage } from "./pages/car.page";
import { addCar, RecordPage } from "./pages/record.page";
import { unsoundness } from "./pages/soundness";
import { expect, test } from "./world";

/**
 * Serials of Series 4 (S4-0001 to S4-0250) that the demo's register does not have, one a test: tests run beside each
 * other, and none may count on a car that another changes.
 */
const numbers = {
  edit: "S4-0003",
  two: "S4-0004",
  claim: "S4-0005",
  advice: "S4-0251",
  scriptless: "S4-0008",
} as const;

test.describe("for the registrar", () => {
  test.use({ as: "registrar" });

  test("a car is added, its status and a mark are edited, and its page and journal say so", async ({
    page,
  }) => {
    const reference = await addCar(page, "sandvaer", {
      "Chassis number": numbers.edit,
      Series: "Series 4",
      Built: "c. 1975",
      "Engine number": "KM 99001",
    });
    expect(reference).toBe(numbers.edit);
    const car = new CarPage(page);
    await expect(car.identity).toContainText("c. 1975");
    await page.getByRole("link", { name: "Edit the record" }).click();
    await page.waitForURL(/\/edit$/);
    const record = new RecordPage(page);

    await record.follow("status", "Add a status");
    await record.field("Status").selectOption({ label: "In use" });
    await record.field("Since").fill("1976");
    await record.save("Add it");
    await record.follow("status", "Add a status");
    await record.field("Status").selectOption({ label: "Laid up" });
    await record.field("Since").fill("3/98");
    await record.field("New source").fill("Letter found by the end-to-end test");
    await record.save("Add it");
    await expect(record.section("status")).toContainText("Laid up (3/98 to now)");
    await expect(record.section("status")).toContainText("In use (1976 to 31 Mar 1998)");

    await record.follow("identity", "Add a number or mark");
    await record.field("Number").fill("XY 1");
    await record.field("Borne from").fill("someday");
    await record.button("Add it").click();
    await expect(record.trouble).toContainText('"someday" is not a date that can be read');
    await expect(record.field("Number")).toHaveValue("XY 1");
    await record.field("Borne from").fill("1976");
    await record.save("Add it");
    await record.follow("identity", "Correct XY 1");
    await record.field("Borne until").fill("c. 1990");
    await record.save("Save");
    await expect(record.section("identity")).toContainText("XY 1 (1976 to c. 1990)");

    await car.open("sandvaer", reference);
    await expect(car.identity).toContainText("Laid up, since 3/98");
    await expect(car.identity).toContainText("XY 1 (1976 to c. 1990)");
  });

  test("a number is explained while it is typed, and what could be meant is proposed", async ({ page }) => {
    await page.goto("/club/sandvaer/add-car");
    await page.getByLabel("Series", { exact: true }).selectOption({ label: "Series 4" });
    await page.getByLabel("Chassis number", { exact: true }).fill(numbers.advice);
    const advice = page.getByRole("main").getByRole("status").filter({ hasText: "0251" });
    await expect(advice).toContainText("0251 lies above the last of Series 4, which is 0250");
    await expect(advice).toContainText("Could be meant: S4-0215 (two digits exchanged)");
    await page.getByLabel("Chassis number", { exact: true }).fill("S2-0421");
    await page.getByLabel("Series", { exact: true }).selectOption({ label: "Series 2" });
    await expect(page.getByText("0421 lies above the last of Series 2, which is 0398")).toBeVisible();
  });

  test("a keeper is added, seen by the registrar, and exported for the person", async ({ page }) => {
    const reference = await addCar(page, "sandvaer", { "Chassis number": "S4-0011", Series: "Series 4" });
    const record = await new RecordPage(page).open("sandvaer", reference);
    await record.follow("keeper", "Add a keeper");
    await record.field("Name").fill("Þórunn Testdóttir");
    await record.field("Kept from").fill("1999");
    await record.save("Add the keeper");
    await record.follow("keeper", /Correct/);
    const href = await page.getByRole("link", { name: /JSON/ }).getAttribute("href");
    const held = await (await page.request.get(href ?? "")).json();
    expect(held).toMatchObject({
      keeper: { name: "Þórunn Testdóttir" },
      keeperships: [{ car: reference, from: "1999" }],
    });
  });

  test("two who edit one car: the second is shown the difference, and loses nothing that was typed", async ({
    page,
    context,
    complaints,
  }) => {
    complaints.allow(answeredWith(409));
    const reference = await addCar(page, "sandvaer", {
      "Chassis number": numbers.two,
      Series: "Series 4",
      Built: "1975",
    });
    const first = await new RecordPage(page).open("sandvaer", reference);
    await first.follow("facts", "Correct when it was built");
    const second = await new RecordPage(await context.newPage()).open("sandvaer", reference);
    await second.follow("facts", "Correct when it was built");

    await first.field("Built").fill("4/75");
    await first.save("Save");
    await second.field("Built").fill("5/75");
    await second.field("Remarks").fill("seen at the works' gate");
    await second.button("Save").click();
    await expect(second.trouble).toContainText("Somebody changed this car since you opened it.");
    const row = second.conflict.getByRole("row", { name: /^Built/ });
    await expect(row).toHaveText(/Built\s*1975\s*4\/75\s*5\/75/);
    await expect(second.field("Remarks")).toHaveValue("seen at the works' gate");

    await second.save("Save over the other change");
    await expect(second.section("facts")).toContainText("5/75");
    await expect(second.section("facts")).toContainText("seen at the works' gate");
  });

  test("a claim is decided with reasons, shows on both cars, and can be reconsidered", async ({ page }) => {
    const filed = { "Chassis number": numbers.claim, Series: "Series 4" };
    const one = await addCar(page, "sandvaer", { ...filed, "Engine number": "KM 99010" });
    const other = await addCar(
      page,
      "sandvaer",
      { ...filed, "Engine number": "KM 99011" },
      { another: true },
    );
    expect(other).toBe(`${numbers.claim}~2`);
    await page.goto("/club/sandvaer/number");
    const finding = page.getByRole("listitem").filter({ hasText: `claim chassis number ${numbers.claim}` });
    await finding.getByRole("link", { name: "Weigh the claims" }).click();
    await page.waitForURL(/\/number\/chassis\//);
    await expect(page.getByRole("region", { name: "The cars side by side" })).toContainText("KM 99011");
    expect(await unsoundness(page)).toEqual([]);

    await page.getByRole("button", { name: "Decide" }).click();
    await expect(page.getByRole("main").getByRole("alert")).toContainText("Write down the reasons");
    await page.getByLabel("Decision", { exact: true }).selectOption({ label: "One car holds it" });
    await page.getByLabel("Holder", { exact: true }).selectOption(other);
    await page.getByLabel("Reasons", { exact: true }).fill("The stamping is the works' own.");
    await page.getByRole("button", { name: "Decide" }).click();
    await expect(page.getByRole("region", { name: "Decided so far" })).toContainText(`${other} holds it`);

    const car = new CarPage(page);
    for (const reference of [one, other]) {
      await car.open("sandvaer", reference);
      const standing = page.getByRole("region", { name: "How its numbers stand" });
      await expect(standing).toContainText(`${other} holds it`);
      await expect(standing).toContainText("The stamping is the works' own.");
    }
    await page.getByRole("link", { name: "See it, or reconsider it" }).click();
    await page.getByLabel("Decision", { exact: true }).selectOption({ label: "All bear it rightly" });
    await page.getByLabel("Holder", { exact: true }).selectOption("");
    await page.getByLabel("Reasons", { exact: true }).fill("Stamped twice: the works' book says so.");
    await page.getByRole("button", { name: "Decide anew" }).click();
    const decided = page.getByRole("region", { name: "Decided so far" });
    await expect(decided.getByRole("listitem").first()).toContainText("All bear it rightly");
    await expect(decided.getByRole("listitem").nth(1)).toContainText("superseded");
  });

  test("every form over a record is sound at both widths", async ({ page }) => {
    for (const width of [360, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      const record = "/club/sandvaer/car/S2-0145/edit";
      const parts = [
        "filed",
        "identity",
        "status",
        "option",
        "keeper",
        "as-built?characteristic=front.camber",
        "note",
      ];
      const pages = [
        "/club/sandvaer/add-car",
        "/club/sandvaer/number",
        record,
        ...parts.map((part) => `${record}/${part}`),
      ];
      for (const path of pages) {
        await page.goto(path);
        expect(await unsoundness(page), `${path} at ${width} px`).toEqual([]);
      }
    }
  });
});

test.describe("without scripts", () => {
  test.use({ as: "registrar", javaScriptEnabled: false });

  test("a number is checked by a button, and a refused form keeps what was typed", async ({ page }) => {
    await page.goto("/club/sandvaer/add-car");
    await page.getByLabel("Chassis number", { exact: true }).fill("S4-O008");
    await page.getByLabel("Series", { exact: true }).selectOption({ label: "Series 4" });
    await page.getByLabel("Built", { exact: true }).fill("never");
    await page.getByRole("button", { name: "Check the number" }).click();
    await expect(page.getByText(/Could be meant: S4-0008/)).toBeVisible();
    await expect(page.getByLabel("Built", { exact: true })).toHaveValue("never");
    await page.getByLabel("Chassis number", { exact: true }).fill(numbers.scriptless);
    await page.getByRole("button", { name: "Add the car" }).click();
    await expect(page.getByRole("main").getByRole("alert")).toContainText('"never" is not a date');
    await expect(page.getByLabel("Chassis number", { exact: true })).toHaveValue(numbers.scriptless);
    await page.getByLabel("Built", { exact: true }).fill("1975");
    await page.getByRole("button", { name: "Add the car" }).click();
    await expect(new CarPage(page).plate).toContainText(numbers.scriptless);
  });
});

test.describe("for the owner", () => {
  test.use({ as: "owner" });

  test("his car is in his list, he corrects his own contact data, and no form of the record opens", async ({
    page,
  }) => {
    await page.goto("/club/sandvaer");
    await expect(page.getByRole("main")).toContainText("S3-0338");
    await page.goto("/club/sandvaer/own-contact");
    await page.getByLabel("Telephone", { exact: true }).fill("555 0199");
    const saved = page.waitForResponse((answer) => answer.request().method() === "POST");
    await page.getByRole("button", { name: "Save" }).click();
    await saved;
    await page.goto("/club/sandvaer/own-contact");
    await expect(page.getByLabel("Telephone", { exact: true })).toHaveValue("555 0199");
    const car = await new CarPage(page).open("sandvaer", "S3-0338");
    await expect(car.identity).toContainText("Óttar Løvfall");
    await expect(page.getByRole("link", { name: "Edit the record" })).toHaveCount(0);
    for (const path of ["car/S3-0338/edit", "car/S3-0338/edit/status", "car/S3-0338/correct", "number"]) {
      await page.goto(`/club/sandvaer/${path}`);
      await expect(page.getByRole("main")).toContainText("This is for: registrar, fleet manager.");
    }
  });
});
