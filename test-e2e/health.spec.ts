import { expect, test } from "./world";

test("the health address says that all is well to whoever asks, and lets nobody keep the answer", async ({
  request,
}) => {
  const answer = await request.get("/api/health");
  expect(answer.status()).toBe(200);
  expect(await answer.json()).toEqual({ ok: true, outdatedClubs: 0 });
  expect(answer.headers()["cache-control"]).toBe("no-store");
  expect(answer.headers()["set-cookie"]).toBeUndefined();
});

test("every answer, page or file, carries the headers that keep a browser safe", async ({ request }) => {
  const safe = {
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "same-origin",
  };
  for (const path of ["/sign-in", "/api/health", "/icon.svg", "/nothing"]) {
    const headers = (await request.get(path)).headers();
    expect(headers, path).toMatchObject(safe);
    expect(headers["x-powered-by"], path).toBeUndefined();
  }
  const policy = (await request.get("/sign-in")).headers()["content-security-policy"] ?? "";
  expect(policy).toContain("default-src 'self'");
  expect(policy).toMatch(/script-src 'self' 'nonce-[\w+/=]+' 'strict-dynamic';/);
  expect(policy).not.toContain("unsafe");
});
