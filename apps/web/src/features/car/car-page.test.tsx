import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../../test/markup";
import { CarPage, type CarPageProps } from "./car-page";

const club = { slug: "sandvaer", name: "Sandvær Register" };
const known = {
  origin: "reading" as const,
  source: { title: "Setting sheet", trust: "documented" as const },
};
const camber = {
  key: "front.camber left",
  label: "Front camber",
  side: "left",
  leader: 6,
  specified: "0° to 1°",
  actual: "−1.2°",
  verdict: "outsideLimits" as const,
  verdictText: "outside limits",
  bracket: { lower: 0, upper: 0.017, value: -0.021 },
  known,
};
const props: CarPageProps = {
  club,
  car: {
    reference: "S2-0417~2",
    chassis: "S2-0417",
    claim: 2,
    claims: 2,
    marque: "Sandvær",
    series: "Series 2 coupé",
    built: "",
    firstRegistered: "c. 1972",
    status: "identityDisputed",
    options: [],
    numbers: [
      { kind: "chassis", number: "S2-0417", standing: "disputed" },
      { kind: "engine", number: "KV-1", standing: "restamped", from: "1980" },
    ],
    more: [],
    version: 3,
  },
  on: "25 November 2026",
  baseline: "factory",
  leaders: [{ leader: 6, assembly: "settings", label: "Settings", deviations: 1 }],
  deviations: [camber],
  notRecorded: 37,
  settings: [
    {
      key: "front",
      label: "Front",
      settings: [
        {
          key: "camber",
          label: "Camber",
          limits: "0° to 1°",
          left: { text: "−1.2°", verdict: "outsideLimits", verdictText: "outside limits" },
        },
      ],
    },
  ],
  sideWords: { left: "Nearside", right: "Offside" },
  assemblies: [
    {
      assembly: "settings",
      label: "Settings",
      leader: 6,
      deviations: 1,
      rows: [camber],
      notRecorded: ["Rear toe-in"],
    },
  ],
  history: [
    {
      key: "1",
      on: "c. 1988",
      title: "Servo taken off",
      changes: [{ label: "Servo", before: "", after: "not fitted" }],
    },
  ],
  cautions: ["Support the car on stands."],
};

describe("a car's page", () => {
  const html = markup(<CarPage {...props} />);
  const text = readText(<CarPage {...props} />);

  test("leaders of the plan lead to sections that are there", () => {
    const targets = tags(html, "a")
      .map((tag) => attribute(tag, "href"))
      .filter((href) => href?.startsWith("#"));
    expect(targets.length).toBeGreaterThan(0);
    for (const target of targets) expect(html).toContain(`id="${target?.slice(1)}"`);
  });

  test("names the deviation, and that the rest is not known", () => {
    expect(text).toContain("Front camber , left");
    expect(text).toContain("37 characteristics are not recorded: whether they differ is not known.");
  });

  test("says what is not recorded, and whose number it is", () => {
    expect(text).toContain("Built not recorded");
    expect(text).toContain("claim 2 of 2 to this number");
    expect(text).toContain("Engine KV-1 (1980 to now), re-stamped");
  });

  test("folds what is specified and not recorded of the car, so that what is known is not lost among it", () => {
    const unknown = { ...camber, key: "front.castor left", label: "Front castor", actual: "" };
    const rows = [camber, { ...unknown, verdict: "notRecorded" as const, verdictText: "not recorded" }];
    const folded = markup(
      <CarPage {...props} assemblies={props.assemblies.map((one) => ({ ...one, rows }))} />,
    );
    const details =
      /<details[^>]*>(?:(?!<\/details>).)*1 specified, not recorded(?:(?!<\/details>).)*<\/details>/s;
    const inside = details.exec(folded)?.[0] ?? "";
    expect(inside).toContain("Front castor");
    expect(inside).not.toContain("Front camber");
    expect(folded.replace(inside, "")).not.toContain("Front castor");
  });

  test("compares with either baseline by an address", () => {
    expect(html).toContain('href="/club/sandvaer/car/S2-0417~2?against=asBuilt#deviations"');
  });

  test("names the corners in the club's words, and the one that was not measured", () => {
    expect(text).toMatch(/Nearside Offside Front/);
    expect(text).toContain("not measured");
  });

  test("carries cautions, and the note that a record is no certificate", () => {
    expect(text).toContain("Support the car on stands.");
    expect(text).toContain("A record, not a certificate");
  });

  test("has one first-level heading, and no id twice", () => {
    expect(tags(html, "h1")).toHaveLength(1);
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
