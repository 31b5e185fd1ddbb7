import { describe, expect, test } from "vitest";
import { contentPolicy, headersForEverything } from "./security-header";

describe("the content policy", () => {
  const policy = contentPolicy("abc", { development: false });

  test("lets only scripts with the page's own nonce run", () => {
    expect(policy).toContain("script-src 'self' 'nonce-abc' 'strict-dynamic';");
    expect(policy).not.toContain("unsafe");
  });

  test("allows no other server, no frame, no foreign form target", () => {
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).toContain("form-action 'self'");
    expect(policy).not.toMatch(/https?:/);
  });

  test("does not force HTTPS on a server that has none", () => {
    expect(policy).not.toContain("upgrade-insecure-requests");
    expect(headersForEverything.map(({ key }) => key)).not.toContain("Strict-Transport-Security");
  });
});
