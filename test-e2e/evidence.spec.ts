import { answeredWith } from "./complaint";
import { CarPage } from "./pages/car.page";
import { EvidencePage } from "./pages/evidence.page";
import { unsoundness } from "./pages/soundness";
import { expect, test } from "./world";

/** Cars that nothing else here is about. */
const cars = { registrar: "S1-0057", scriptless: "S1-0053", refused: "S1-0054", api: "S1-0061" } as const;

/** Pictures of this run: what was added by an earlier one is on record already. */
const run = Date.now() % 1_000_000;

const html = {
  name: "photo.jpg",
  mimeType: "image/jpeg",
  buffer: Buffer.from("<!DOCTYPE html><script>alert(1)</script>"),
};
const pdf = (said: string) => ({
  name: "letter of the works.pdf",
  mimeType: "application/pdf",
  buffer: Buffer.from(`%PDF-1.7\n% ${said}\nxref\n0 0\ntrailer\n<<>>\nstartxref\n0\n%%EOF\n`),
});

test.describe("for the registrar", () => {
  test.use({ as: "registrar" });

  test("asked for without saying of what, one is told where it is kept", async ({ page }) => {
    await page.goto("/club/sandvaer/evidence");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Photos and documents");
    await page.getByRole("link", { name: "Find the car" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Register");
  });

  test("a photo is added, turned upright, linked to a value, and stands beside that value on the car's page", async ({
    page,
  }) => {
    const evidence = await new EvidencePage(page).open("sandvaer", cars.registrar);
    const caption = `Front bar ${run}`;
    await evidence.choose([await evidence.photo("bar.jpg", run)], caption);
    await evidence.add.click();
    await expect(evidence.form.getByRole("link", { name: "Added" })).toBeVisible();
    const card = evidence.card(caption);
    await expect(card).toHaveCount(1);
    expect(await evidence.isDrawn(card.locator("img"))).toBe(true);

    await card.click();
    await expect(page.getByRole("heading", { level: 1, name: caption })).toBeVisible();
    await expect(page.getByText("400 × 300 pixels")).toBeVisible();
    await page.getByRole("button", { name: "Turn right" }).click();
    await expect(page.getByText("300 × 400 pixels")).toBeVisible();
    expect(await evidence.large.getAttribute("src")).toMatch(/\/1280-1\.webp$/);
    expect(await evidence.isDrawn(evidence.large)).toBe(true);

    await page.getByText("Link it to something else").click();
    const choice = page.getByRole("combobox", { name: "What it supports" });
    const value = await choice
      // What is on the car now: an as-built value may have been overtaken, and then nothing stands beside it.
      .locator("optgroup[label='Setting sheet'] option")
      .first();
    const label = (await value.textContent()) ?? "";
    await choice.selectOption({ label });
    await page.getByRole("button", { name: "Link it" }).click();
    await expect(
      page.getByRole("region", { name: "What it supports" }).getByRole("link", { name: label }),
    ).toBeVisible();

    await new CarPage(page).open("sandvaer", cars.registrar);
    const beside = page.locator(".support-strip img").first();
    expect(await evidence.isDrawn(beside)).toBe(true);
    await expect(page.getByRole("link", { name: /photos? (or|and) documents?/ }).first()).toBeVisible();
  });

  test("what a photo shows is corrected, a date that is none is told at its field, and the photo is withdrawn", async ({
    page,
  }) => {
    const evidence = await new EvidencePage(page).open("sandvaer", cars.refused);
    const caption = `Rear bar ${run}`;
    await evidence.choose([await evidence.photo("rear.jpg", run + 1)], caption);
    await evidence.add.click();
    await evidence.card(caption).click();
    const form = page.getByRole("region", { name: "What it shows" });
    await form.getByLabel("Taken").fill("a while ago");
    await form.getByRole("button", { name: "Save" }).click();
    await expect(form.getByLabel("Taken")).toHaveAttribute("aria-invalid", "true");
    await expect(form.getByLabel("Taken")).toHaveValue("a while ago");
    await form.getByLabel("Taken").fill("c. 1971");
    await form.getByRole("button", { name: "Save" }).click();
    await expect(page.getByRole("definition").filter({ hasText: "c. 1971" })).toBeVisible();

    await page.getByText("Withdraw it", { exact: true }).first().click();
    await page.getByLabel("Why").fill("Shows another car");
    await page.getByRole("button", { name: "Withdraw it" }).click();
    await expect(page.getByText(/^Withdrawn on .*: Shows another car$/)).toBeVisible();
    await expect(page.locator("img.evidence-large")).toHaveCount(0);
    await evidence.open("sandvaer", cars.refused);
    await expect(evidence.card(caption)).toHaveCount(0);
  });

  test("of several files the good ones are kept and each other one says why not", async ({
    page,
    complaints,
  }) => {
    complaints.allow(answeredWith(415));
    const evidence = await new EvidencePage(page).open("sandvaer", cars.refused);
    const caption = `Mixed ${run}`;
    await evidence.choose([html, await evidence.photo("good.jpg", run + 2)], caption);
    await evidence.add.click();
    await expect(evidence.refusal).toContainText(
      "photo.jpg is no photo or document that can be kept: its content is an HTML page.",
    );
    await expect(evidence.card(caption)).toHaveCount(1);
  });

  test("a document is handed out as a download that can run nothing, in parts where they are asked for", async ({
    page,
    requestAs,
  }) => {
    const evidence = await new EvidencePage(page).open("sandvaer", cars.api);
    const caption = `Letter ${run}`;
    const letter = pdf(String(run));
    await evidence.choose([letter], caption);
    await evidence.add.click();
    await evidence.card(caption).click();
    const href = (await page.getByRole("link", { name: "Save the PDF" }).getAttribute("href")) ?? "";
    const whole = await page.request.get(href);
    expect(whole.status()).toBe(200);
    expect(await whole.body()).toEqual(letter.buffer);
    expect(whole.headers()).toMatchObject({
      "content-type": "application/pdf",
      "content-disposition": `attachment; filename="letter of the works.pdf"; filename*=UTF-8''letter%20of%20the%20works.pdf`,
      "x-content-type-options": "nosniff",
      "cache-control": "private, max-age=31536000, immutable",
    });
    expect(whole.headers()["content-security-policy"]).toContain("sandbox");
    const part = await page.request.get(href, { headers: { range: "bytes=0-7" } });
    expect([part.status(), await part.text()]).toEqual([206, "%PDF-1.7"]);

    const stranger = await requestAs("fleetManager");
    expect((await stranger.get(href)).status()).toBe(403);
    expect((await stranger.get(href.replace("sandvaer", "grusvik"))).status()).toBe(404);
    const small = href.replace("/file", "/320-0.webp");
    expect((await page.request.get(small)).status()).toBe(404);
  });

  test("a file of 45 MB is refused with the figures, whoever sends it", async ({ page }) => {
    const answer = await page.request.post("/api/club/sandvaer/evidence", {
      headers: { accept: "application/json" },
      multipart: {
        for: "car:01900000-0000-7000-8000-000000000001",
        file: { name: "huge.jpg", mimeType: "image/jpeg", buffer: Buffer.alloc(45_000_000, 255) },
      },
    });
    expect(answer.status()).toBe(413);
    expect(await answer.json()).toMatchObject({
      refusal: { what: "huge.jpg: 45.0 MB; at most 40.0 MB is taken." },
    });
  });

  test("the pages hold on a phone and at a desk, and say everything they draw", async ({ page }) => {
    const evidence = await new EvidencePage(page).open("sandvaer", cars.api);
    const caption = `Plate ${run}`;
    await evidence.choose([await evidence.photo("plate.jpg", run + 3)], caption);
    await evidence.add.click();
    await expect(evidence.card(caption)).toHaveCount(1);
    const address = (await evidence.card(caption).getAttribute("href")) ?? "";
    for (const path of [
      `/club/sandvaer/car/${cars.api}/evidence`,
      address,
      `/club/sandvaer/evidence?for=car:1`,
    ]) {
      await page.goto(path);
      for (const width of [360, 1440]) {
        await page.setViewportSize({ width, height: 800 });
        expect(await unsoundness(page), `${path} at ${width} px`).toEqual([]);
      }
    }
  });
});

test.describe("with scripts switched off", () => {
  test.use({ as: "registrar", javaScriptEnabled: false });

  test("a document is added by the plain form, and a dressed one refused with what was typed still there", async ({
    page,
  }) => {
    const evidence = await new EvidencePage(page).open("sandvaer", cars.scriptless);
    const caption = `By form ${run}`;
    await evidence.choose([pdf(`plain ${run}`)], caption);
    await evidence.add.click();
    await expect(page.getByText("One file is on record now.")).toBeVisible();
    await expect(evidence.card(caption)).toHaveCount(1);

    await evidence.choose([pdf(`second ${run}`), html], "Dressed");
    await evidence.add.click();
    await expect(evidence.refusal).toContainText("its content is an HTML page.");
    await expect(evidence.form.getByLabel("What it shows")).toHaveValue("Dressed");
    // All that were sent together, or none.
    await expect(evidence.card("Dressed")).toHaveCount(0);

    await evidence.choose([], "");
    await evidence.add.click();
    await expect(evidence.refusal).toContainText("No file was chosen.");
  });
});

test.describe("for the owner", () => {
  test.use({ as: "owner" });

  test("photos are added to the car he keeps, and another's are looked at only", async ({
    page,
    complaints,
  }) => {
    const evidence = await new EvidencePage(page).open("sandvaer", "S1-0057");
    await expect(page.getByRole("heading", { level: 1, name: "Photos and documents" })).toBeVisible();
    await expect(evidence.form).toHaveCount(0);

    await page.goto("/club/sandvaer");
    const own = await page.locator(".plate-small-number").first().textContent();
    await evidence.open("sandvaer", own ?? "");
    const caption = `My car ${run}`;
    await evidence.choose([await evidence.photo("mine.jpg", run + 4)], caption);
    await evidence.add.click();
    await expect(evidence.card(caption)).toHaveCount(1);
    complaints.allow(answeredWith(403));
  });
});
