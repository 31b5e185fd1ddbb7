import type { CarEvidence, SupportLine } from "@trunnion/api";
import { describe, expect, test, vi } from "vitest";
import { attribute, markup, readText, tags } from "../../test/markup";
import { EvidencePage, SupportPage } from "./evidence-page";
import { saySize } from "./size";
import { SupportMark } from "./support-mark";
import { supportedBy } from "./supported";

vi.mock("next/navigation", () => ({ useRouter: () => ({ refresh: () => undefined }) }));

const club = { slug: "sandvaer", name: "Sandvær Register" };
const car = "01900000-0000-7000-8000-000000000001";
const note = "01900000-0000-7000-8000-000000000002";

const photo = (more: Partial<SupportLine> = {}): SupportLine => ({
  id: "01900000-0000-7000-8000-00000000000a",
  linkId: "01900000-0000-7000-8000-0000000000aa",
  target: { kind: "car", id: car },
  mediaType: "image/jpeg",
  picture: true,
  bytes: 2_400_000,
  width: 3000,
  height: 4000,
  quarterTurns: 1,
  caption: "Front bar",
  taken: "c. 1971",
  locus: "left",
  characteristic: "",
  ...more,
});

const evidence: CarEvidence = {
  club: { ...club, id: car, kind: "ownersClub", unitSystem: "metric", sideWords: "leftRight" },
  car: { reference: "S1-0004", chassis: "S1-0004" },
  groups: [
    {
      target: { kind: "car", id: car, carId: car, label: "S1-0004", past: false },
      reference: `car:${car}`,
      pieces: [photo(), photo({ linkId: "b", caption: "" })],
    },
    {
      target: { kind: "historyNote", id: note, carId: car, label: "c. 1988: Seen in a barn", past: true },
      reference: `historyNote:${note}`,
      pieces: [photo({ linkId: "c", picture: false, mediaType: "application/pdf", caption: "Letter" })],
    },
  ],
  pieces: 3,
  choices: [
    { reference: `car:${car}`, kind: "car", label: "S1-0004" },
    { reference: `historyNote:${note}`, kind: "historyNote", label: "c. 1988: Seen in a barn" },
  ],
  mayAdd: true,
};

describe("a car's photos and documents", () => {
  const html = markup(<EvidencePage club={club} evidence={evidence} chosen={`historyNote:${note}`} />);
  const text = readText(<EvidencePage club={club} evidence={evidence} />);

  test("stand by what they support, each with what it shows, when it was taken and where to look", () => {
    expect(text).toContain("The car as a whole");
    expect(text).toContain("Front bar c. 1971, left");
    expect(text).toContain("no caption");
    expect(text).toContain("c. 1988: Seen in a barn superseded");
    expect(text).toContain("PDF, 2.4 MB");
  });

  test("are drawn upright, in a size that is known before they come, with a name for who cannot see them", () => {
    const [first, second] = tags(html, "img");
    expect(attribute(first, "src")).toBe(
      "/api/club/sandvaer/evidence/01900000-0000-7000-8000-00000000000a/320-1.webp",
    );
    expect([attribute(first, "width"), attribute(first, "height")]).toEqual(["240", "320"]);
    expect(attribute(first, "alt")).toBe("Front bar");
    expect(attribute(second, "alt")).toBe("Photo without a caption");
  });

  test("are narrowed by kind through an address, and the form is set to what was asked for", () => {
    expect(html).toContain('href="/club/sandvaer/car/S1-0004/evidence?of=historyNote"');
    expect(html).toMatch(new RegExp(`<option value="historyNote:${note}" selected`));
    const narrow = readText(<EvidencePage club={club} evidence={evidence} of="historyNote" />);
    expect(narrow).not.toContain("Front bar");
    expect(narrow).toContain("Letter");
  });

  test("are sent by a plain form where no script runs", () => {
    const form = tags(html, "form").find((tag) => tag.includes("multipart"));
    expect(attribute(form, "action")).toBe("/api/club/sandvaer/evidence");
    expect(attribute(form, "method")).toBe("post");
    const files = tags(html, "input").filter((tag) => attribute(tag, "type") === "file");
    expect(files).toHaveLength(2);
    for (const file of files) expect(attribute(file, "accept")).not.toMatch(/heic|svg|\*/);
  });

  test("show no form to whoever may not add, and what was typed to whoever was refused", () => {
    const readOnly = markup(<EvidencePage club={club} evidence={{ ...evidence, mayAdd: false }} />);
    expect(readOnly).not.toContain("multipart");
    const outcome = {
      text: { what: "It is HTML.", remedy: "Send a photo." },
      typed: { caption: "My bar", taken: "", locus: "", keepLocation: true },
    };
    const again = markup(<EvidencePage club={club} evidence={evidence} outcome={outcome} />);
    expect(again).toContain('value="My bar"');
    expect(again).toContain("It is HTML.");
  });

  test("that there are none of are said to be none", () => {
    const none = { ...evidence, groups: [], pieces: 0 };
    expect(readText(<EvidencePage club={club} evidence={none} />)).toContain("None yet");
  });
});

test("what supports one thing asks not what the next one supports", () => {
  const [, group] = evidence.groups;
  if (!group) throw new Error("a group");
  const page = markup(<SupportPage club={club} evidence={{ club: evidence.club, group, mayAdd: true }} />);
  expect(page).toContain(`<input type="hidden" name="for" value="historyNote:${note}"/>`);
  expect(page).not.toContain("<optgroup");
});

describe("beside a value", () => {
  test("stand three pictures at most, the rest as a number, and in words how far it is trusted", () => {
    const many = ["a", "b", "c", "d", "e"].map((linkId) => photo({ linkId }));
    const html = markup(<SupportMark club="sandvaer" support={many} trust="stated" />);
    expect(tags(html, "img")).toHaveLength(3);
    expect(html).toContain("and 2 more");
    expect(html).toContain("stated by the keeper");
  });

  test("stands nothing where nothing supports it, or where the value is only what is specified", () => {
    const row = {
      label: "Bar",
      specified: "16 mm",
      verdict: "notRecorded",
      verdictText: "not recorded",
    } as const;
    const known = { ...row, key: "bar whole", actual: "16 mm" };
    const supported = supportedBy("sandvaer", { "bar whole": [photo()], "other whole": [photo()] });
    const rows = supported.rows([
      known,
      { ...row, key: "other whole", actual: "" },
      { ...known, key: "third whole" },
    ]);
    expect(rows.map(({ support }) => support !== undefined)).toEqual([true, false, false]);
  });
});

test.each([
  [999, "999 B"],
  [240_400, "240 kB"],
  [3_140_000, "3.1 MB"],
])("%i bytes are %s", (bytes, said) => {
  expect(saySize(bytes)).toBe(said);
});
