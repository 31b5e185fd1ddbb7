import { describe, expect, test } from "vitest";
import { appRouter } from "./router";

interface Declared {
  readonly _def: { readonly type: string; readonly meta?: { readonly mayCall?: string } };
}

const procedures = Object.entries(appRouter._def.procedures as unknown as Record<string, Declared>);

describe("every procedure", () => {
  test("is found by this test", () => {
    expect(procedures.map(([path]) => path)).toContain("event.page");
    expect(procedures.length).toBeGreaterThanOrEqual(10);
  });

  test.each(procedures)("%s declares who may call it", (_, procedure) => {
    expect(["anyone", "signedIn", "member"]).toContain(procedure._def.meta?.mayCall);
  });

  test("that anyone may call is one of these: a link is their key, or the club chose to show", () => {
    const open = procedures.filter(([, { _def }]) => _def.meta?.mayCall === "anyone").map(([path]) => path);
    expect(open.sort()).toEqual([
      "invitation.accept",
      "invitation.find",
      "publicExtract.car",
      "publicExtract.list",
    ]);
  });
});
