import { describe, expect, test } from "vitest";
import { refused } from "./refusal";
import { sayRefusal } from "./refusal-words";

describe("the wording of a refusal", () => {
  test("names what was found and what there is", () => {
    const text = sayRefusal(refused("EVENT_NOT_FOUND", { event: "autum", known: ["autumn-2026"] }));
    expect(text.what).toContain('"autum"');
    expect(text.remedy).toContain("autumn-2026");
  });

  test("says roles in words, not in codes", () => {
    const text = sayRefusal(
      refused("ROLE_NEEDED", { needed: ["registrar", "fleetManager"], has: ["owner"] }),
    );
    expect(text.what).toBe("This is for: registrar, fleet manager. You are: owner.");
  });
});
