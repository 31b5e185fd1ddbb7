import type { SheetFace, SheetLook } from "@trunnion/api";
import { describe, expect, test } from "vitest";
import { markup } from "../../test/markup";
import { LookPage } from "./look-page";
import { SheetFacePage } from "./sheet-face-page";

const look: SheetLook = {
  entryId: "e",
  code: "7K2M9QXT",
  number: "42",
  chassis: "SV2-0417",
  driver: "Þórdís",
  changes: [{ what: "Front camber, left", printed: "−1°15'", now: "−0°20'" }],
  findings: [
    {
      key: "k",
      check: "wheel-nuts",
      text: "Wheel nuts all there",
      result: "refuse",
      note: "one loose",
      readings: [{ characteristic: "front.camber", side: "left", entered: "-1°10'" }],
      state: "differs",
      was: [{ result: "pass", note: "", by: "Tõnu" }],
      replaces: ["j"],
    },
  ],
  open: 3,
  unresolved: [{ text: "Mirrors firm", written: "left cracked" }],
};
const page = (more: Partial<Parameters<typeof LookPage>[0]> = {}) =>
  markup(
    <LookPage
      club="sandvaer"
      event={{ slug: "track", name: "Track day" }}
      drop="d"
      file="filled.pdf"
      looks={[look]}
      {...more}
    />,
  );

describe("a filled-in sheet looked at", () => {
  test("stands beside what was found so far, and is taken by one button", () => {
    const html = page();
    expect(html).toContain("Take 1 record<");
    expect(html).toContain('method="post"');
    expect(html).toContain("left -1°10&#x27;, one loose");
    expect(html).toContain("passed, Tõnu");
    expect(html).toContain("takes the place of what differs");
  });

  test("says what changed since it was printed, and what has no result", () => {
    const html = page();
    expect(html).toContain("Front camber, left: printed −1°15&#x27;, now −0°20&#x27;");
    expect(html).toContain("Mirrors firm – left cracked");
    expect(html).toContain("3 checks are open on it.");
  });

  test("that was taken before has no button", () => {
    const known = {
      ...look,
      findings: look.findings.map((finding) => ({ ...finding, state: "known" as const })),
    };
    const html = page({ looks: [known] });
    expect(html).not.toContain("<form");
    expect(html).toContain("Everything on it was taken before.");
  });

  test("refused is told in words", () => {
    const html = page({ looks: [], refusal: { what: "It is locked.", remedy: "Unlock it." } });
    expect(html).toContain('role="alert"');
    expect(html).toContain("It is locked.");
  });
});

describe("what a printed code leads to", () => {
  const face: SheetFace = {
    code: "7K2M9QXT",
    club: "Sandvær Register",
    event: "Track day",
    number: "42",
    printedAt: "2026-05-14T18:30:00.000Z",
    standing: "changed",
  };

  test("says that the record changed, and to whom what is told", () => {
    const html = markup(<SheetFacePage face={face} />);
    expect(html).toContain("Changed since printing");
    expect(html).toContain("Members of the club see what changed");
  });

  test("lists the changes for a member", () => {
    const html = markup(<SheetFacePage face={{ ...face, changes: look.changes }} />);
    expect(html).toContain("What changed");
    expect(html).toContain("now −0°20&#x27;");
  });
});
