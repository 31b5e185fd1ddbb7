import { invite, inviteByCommand } from "./invite";
import { DeskPage } from "./pages/desk.page";
import { InvitationPage } from "./pages/invitation.page";
import { SignInPage } from "./pages/sign-in.page";
import { expect, test } from "./world";

const chosen = "four words make sense";

/** An address that no other test, and no other run, has invited. */
const newcomer = () => `guest-${crypto.randomUUID()}@demo.test`;

test("an invitation becomes an account and a membership, and its link works once", async ({
  page,
  browser,
}) => {
  const email = newcomer();
  const path = await inviteByCommand({ email, club: "sandvaer", roles: ["scrutineer"] });
  const invitation = await new InvitationPage(page).open(path);
  await expect(invitation.heading).toHaveText("Join Sandvær Register");
  await expect(page.getByRole("main")).toContainText(`Sandvær Register invites ${email} as scrutineer.`);
  await expect(page.getByLabel("E-mail address")).toHaveValue(email);

  await test.step("a short password is told at its field, with what would be right, and the name is kept", async () => {
    await invitation.name.fill("Þóra Ěvansdal");
    await invitation.password.fill("elevenchars");
    // The browser's own check would keep it back: the service must not rely on that.
    await page.locator("form").evaluate((form) => form.setAttribute("novalidate", ""));
    await invitation.join.click();
    await expect(invitation.password).toHaveAttribute("aria-invalid", "true");
    await expect(invitation.password).toHaveAccessibleDescription(/At least 12 characters\.$/);
    await expect(invitation.name).toHaveValue("Þóra Ěvansdal");
    await expect(invitation.password).toHaveValue("");
  });

  await test.step("a name of nothing but blanks is told at its field", async () => {
    await invitation.name.fill("   ");
    await invitation.password.fill(chosen);
    await invitation.join.click();
    await expect(invitation.name).toHaveAttribute("aria-invalid", "true");
    await expect(invitation.name).toHaveAccessibleDescription(/Your name, up to 100 characters\.$/);
  });

  await test.step("a good one brings them in, signed in, with the role they were invited as", async () => {
    await invitation.name.fill("Þóra Ěvansdal");
    await invitation.password.fill(chosen);
    await invitation.join.click();
    await page.waitForURL("/club/sandvaer");
    await expect(new DeskPage(page).you).toContainText("Þóra Ěvansdal, scrutineer");
  });

  await test.step("the link is used up, for them and for whoever else has it", async () => {
    const other = await browser.newContext();
    const stranger = await new InvitationPage(await other.newPage()).open(path);
    await expect(stranger.page.getByRole("main")).toContainText("This invitation has been used already.");
    await expect(stranger.page.getByRole("main")).toContainText("Ask the registrar for a new one.");
    await expect(stranger.join).toHaveCount(0);
    const again = await stranger.page.request.post(`/api${path}`, {
      form: { name: "Somebody else", password: "another long password" },
      maxRedirects: 0,
    });
    expect(again.headers().location).toContain(path);
    await other.close();
  });

  await test.step("the password is theirs from now on", async () => {
    await new DeskPage(page).signOut();
    await (await new SignInPage(page).open()).send(email, chosen);
    await page.waitForURL("/club/sandvaer");
  });
});

test("whoever has an account joins a further club with the password they have, and with no other", async ({
  page,
  requestAs,
}) => {
  const email = newcomer();
  const registrar = await requestAs("registrar");
  const invitation = await new InvitationPage(page).open(
    await invite(registrar, { email, club: "sandvaer", roles: ["owner"] }),
  );
  await invitation.name.fill("Ísold Næsbø");
  await invitation.password.fill(chosen);
  await invitation.join.click();
  await page.waitForURL("/club/sandvaer");
  await new DeskPage(page).signOut();

  const fleetManager = await requestAs("fleetManager");
  await invitation.open(await invite(fleetManager, { email, club: "grusvik", roles: ["scrutineer"] }));
  await expect(invitation.heading).toHaveText("Join Grusvik Track School");
  await expect(invitation.name).toHaveCount(0);
  await invitation.password.fill("not the password they have");
  await invitation.join.click();
  await expect(page.getByRole("main").getByRole("alert")).toContainText("do not belong together");
  await invitation.password.fill(chosen);
  await invitation.join.click();
  await page.waitForURL("/club/grusvik");
  await expect(new DeskPage(page).you).toContainText("Ísold Næsbø, scrutineer");
});

test("only a registrar or a fleet manager invites, and only to a club of their own", async ({
  requestAs,
}) => {
  for (const [who, club] of [
    ["owner", "sandvaer"],
    ["scrutineer", "sandvaer"],
    ["registrar", "grusvik"],
    ["fleetManager", "sandvaer"],
  ] as const) {
    const request = await requestAs(who);
    const data = { email: newcomer(), club, roles: ["registrar"] };
    const answer = await request.post("/api/trpc/invitation.invite", { data });
    expect(answer.status(), `${who} to ${club}`).toBe(403);
    expect(await answer.text()).toMatch(/This is for: registrar, fleet manager|You are not a member of/);
  }
});

test("a link that is none of ours says so, however it is written", async ({ page }) => {
  for (const link of ["x", "a".repeat(43), "a".repeat(400)]) {
    const invitation = await new InvitationPage(page).open(`/invitation/${link}`);
    await expect(page.getByRole("main")).toContainText("This invitation link is not known here.");
    await expect(invitation.join).toHaveCount(0);
    const sent = await page.request.post(`/api/invitation/${link}`, {
      form: { name: "Somebody", password: chosen },
      maxRedirects: 0,
    });
    expect(sent.status()).toBe(303);
    expect(sent.headers()["set-cookie"]).toBeUndefined();
  }
});
