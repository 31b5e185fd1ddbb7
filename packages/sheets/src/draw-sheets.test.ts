import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import type { SheetModel } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { drawSheets } from "./draw-sheets";
import { outside, overlaps, readBack } from "./sample/read-back";
import { fullSheet, plainSheet, sampleDeviations, sampleSheet } from "./sample/sample-sheet";

const papers = ["A4", "Letter"] as const;
const digest = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

async function drawn(models: readonly SheetModel[], paper: "A4" | "Letter" = "A4") {
  const read = await readBack(await drawSheets(models, { paper }));
  for (const page of read.pages) {
    expect(overlaps(page)).toEqual([]);
    expect(outside(page)).toEqual([]);
  }
  return read;
}

/** Every text of a model, as a reader who joins lines with spaces finds it. */
function* textsOf(value: unknown, key = ""): Generator<string> {
  if (typeof value === "string") {
    if (
      ![
        "id",
        "station",
        "assembly",
        "verdict",
        "kind",
        "preparedAt",
        "recordHash",
        "characteristic",
        "key",
        "link",
        "side",
        "unit",
        "source",
        "method",
        // What the short wording stands for; the file's attachment and the phone have it.
        "text",
      ].includes(key)
    )
      yield value.replace(/\s+/g, " ");
  } else if (Array.isArray(value)) for (const item of value) yield* textsOf(item, key);
  else if (typeof value === "object" && value !== null)
    for (const [name, item] of Object.entries(value)) yield* textsOf(item, name);
}

const bare = (text: string) => text.replaceAll(" ", "").replace(/[.]$/, "");

describe("what stands on the sheet", () => {
  test.each(papers)("every text of the model is on the %s sheet", async (paper) => {
    const model = sampleSheet();
    // Assemblies are named by the plan's numbers, read aloud with the plan.
    const { leaders: _plan, ...said } = model;
    const { text } = await drawn([model], paper);
    const squeezed = text.replaceAll(" ", "");
    const missing = [...textsOf(said)].filter((one) => !squeezed.includes(bare(one)));
    // A setting's difference is seen on its bracket, "added" says that there was none; what the record does not tell
    // needs no other reason.
    expect(missing).toEqual([
      "−1°24′",
      "None",
      "14 inch wheels, ×1.077 of specified; tyre date not recorded.",
    ]);
  });

  test("what is different comes before settings, and checks before the result", async () => {
    const { text } = await drawn([sampleSheet()]);
    const order = [
      "What is different about this car",
      "Settings against limits",
      "Checks, walking round the car",
      "Result",
    ];
    const places = order.map((heading) => text.indexOf(heading));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(Math.min(...places)).toBeGreaterThan(0);
  });

  test("each page carries running number, page of pages, short record hash, layout and time", async () => {
    const { pages } = await drawn([sampleSheet()]);
    expect(pages.length).toBeGreaterThan(1);
    pages.forEach((page, at) => {
      expect(page.text).toContain(`No. 42 · page ${at + 1} of ${pages.length}`);
      expect(page.text).toContain(
        "Sheet 7K2M9QXT · Record 3f9a 1c0b 77d2 4e58 · layout 3 · prepared 14 May 2026, 18:30 UTC",
      );
      expect(page.text).toContain("SV2-0417");
    });
  });

  test("the running number is the largest thing on the first page", async () => {
    const { pages } = await drawn([sampleSheet()]);
    const [largest] = [...(pages[0]?.items ?? [])].sort((a, b) => b.size - a.size);
    expect(largest?.text).toBe("42");
    expect(largest?.size).toBeGreaterThan(70);
  });

  test("sources stand once, in a list with numbers, and common practice needs none", async () => {
    const { text } = await drawn([sampleSheet()]);
    expect(text.split("Club starter rules 2026").length - 1).toBe(1);
    expect(text).toContain("Club starter rules 2026: ¹ 3; ² 7");
    expect(text).toContain("See the membership card, valid on the day¹");
    expect(text).toContain("without a number: common practice");
  });

  test.each(papers)("on %s what is read at arm's length is set in eight points or more", async (paper) => {
    const model = sampleSheet();
    const { pages } = await drawn([model], paper);
    const { deviations, settings, stations, cautions, entry, car } = model;
    const read = [...textsOf({ deviations, settings, stations, cautions, entry, car })].join(" ");
    const small = pages.flatMap(({ items }) => items).filter(({ size }) => size < 7.99);
    // Footer, names over columns and fields, numbers of checks, sources.
    expect(Math.min(...small.map(({ size }) => size))).toBeGreaterThanOrEqual(6);
    const inStrip = new Set(["SV2-0417"]);
    const told = small.filter(({ text }) => text.length > 5 && read.includes(text) && !inStrip.has(text));
    expect(told.map(({ text }) => text)).toEqual([]);
  });

  test.each(papers)(
    "a car by the starter rules takes two %s pages, as ordinary or as modified as it is",
    async (paper) => {
      for (const model of [plainSheet(7), fullSheet(8)])
        expect((await drawn([model], paper)).pages).toHaveLength(2);
    },
  );
});

describe("a car with nothing to report", () => {
  test("says that nothing on record differs, and how much is not recorded", async () => {
    const { text } = await drawn([sampleSheet({ deviations: [], notRecorded: 112 })]);
    expect(text).toContain("Nothing on record differs from specification.");
    expect(text).toContain("112 characteristics are not recorded. Not known is not the same as in order.");
  });

  test("does not call a car known that is not on the register", async () => {
    const sheet = sampleSheet({ deviations: [] });
    const { text } = await drawn([{ ...sheet, car: { ...sheet.car, onRegister: false } }]);
    expect(text).toContain("Not on the register: standard checks only");
    expect(text).not.toContain("Nothing on record differs");
  });

  test("is drawn from a model that has no lists and no words at all", async () => {
    const { pages } = await drawn([
      {
        ...sampleSheet({
          deviations: [],
          settings: [],
          stations: [],
          cautions: [],
          leaders: [],
          notRecorded: 0,
        }),
        club: "",
        event: { name: "", on: "", venue: "", ruleSet: "" },
        entry: { runningNumber: "", group: "", className: "", driver: "" },
        car: {
          chassis: "",
          marque: "",
          series: "",
          built: "",
          body: "",
          colour: "",
          registration: "",
          onRegister: true,
        },
      },
    ]);
    expect(pages).toHaveLength(1);
  });
});

describe("awkward texts", () => {
  const remark = `${"The nearside rear hose was re-routed with a clip made in the paddock and wants looking at. ".repeat(5)}End.`;

  test("a remark of 400 characters is bounded, ends in an ellipsis, and the sheet stays two pages", async () => {
    expect(remark.length).toBeGreaterThan(400);
    const sheet = sampleSheet();
    const [first] = sheet.deviations;
    const [station, ...others] = sheet.stations;
    const [check] = station?.checks ?? [];
    if (first === undefined || station === undefined || check === undefined)
      throw new Error("the sample lost its rows");
    const { text, pages } = await drawn([
      {
        ...sheet,
        deviations: [{ ...first, label: "Hose", actual: remark, since: remark }],
        stations: [
          { ...station, checks: [{ ...check, special: true, why: remark, method: remark }] },
          ...others,
        ],
        cautions: [remark],
        settings: [
          {
            key: "front.toe",
            label: remark,
            unit: "mm",
            limits: "",
            whole: { text: remark, verdictText: "" },
          },
        ],
      },
    ]);
    expect(pages).toHaveLength(2);
    expect(text.split("…").length - 1).toBeGreaterThanOrEqual(5);
    // The caution has room for it, and is not broken off.
    expect(text.replaceAll(" ", "")).toContain(remark.replaceAll(" ", ""));
  });

  test("a driver's name of 400 characters is told whole below the head, of one of 1,000 how much is left out", async () => {
    const sheet = sampleSheet();
    const name = (length: number) => "Ætt og uro ".repeat(200).slice(0, length).trim();
    const whole = await drawn([{ ...sheet, entry: { ...sheet.entry, driver: name(400) } }]);
    expect(whole.text.replaceAll(" ", "")).toContain(name(400).replaceAll(" ", ""));
    const more = await drawn([{ ...sheet, entry: { ...sheet.entry, driver: name(1000) } }]);
    expect(more.text).toContain("characters more in the record");
  });

  test("a word that no line can hold is cut, not run off the paper", async () => {
    const sheet = sampleSheet();
    const word = "W".repeat(300);
    await drawn([
      {
        ...sheet,
        entry: { runningNumber: "1234567890123456789", group: word, className: word, driver: word },
        car: { ...sheet.car, chassis: "X".repeat(90), series: word, colour: word, registration: word },
        event: { ...sheet.event, name: word, venue: word },
      },
    ]);
  });

  test("Latin, Greek and Cyrillic are printed and can be found again", async () => {
    const driver = "Þórdís Łaszczyńska, Ñandú, Şükrü, Ő, Ελευθερία Ώρα, Щербаков Ёлкин, Nguyễn";
    const sheet = sampleSheet();
    const { text } = await drawn([{ ...sheet, entry: { ...sheet.entry, driver } }]);
    expect(text.replaceAll(" ", "")).toContain(driver.replaceAll(" ", ""));
    expect(text).not.toContain("could not be printed");
  });

  test("characters the typeface lacks become squares, and the sheet says how many", async () => {
    const sheet = sampleSheet();
    const { pages } = await drawn([{ ...sheet, entry: { ...sheet.entry, driver: "سامي 🏁 Öst 👩‍🔧" } }]);
    for (const page of pages) {
      expect(page.text).toContain("□□□□ □ Öst □");
      expect(page.text).toContain(
        "6 characters of this sheet have no shape in the sheet's typeface and could not be printed",
      );
    }
  });

  test("control characters, broken surrogates and byte order marks do no harm", async () => {
    const sheet = sampleSheet();
    const { text } = await drawn([
      { ...sheet, entry: { ...sheet.entry, driver: "\ufeffA\u0000B\ud83dC\r\nD\tE(\\)" } },
    ]);
    expect(text).toContain("A□B□C");
    expect(text).toContain("D E(\\)");
  });

  test("letters sent as base and accent are joined", async () => {
    const sheet = sampleSheet();
    const { text } = await drawn([{ ...sheet, entry: { ...sheet.entry, driver: "A\u030angstro\u0308m" } }]);
    expect(text).toContain("Ångström");
  });
});

describe("many", () => {
  test("of 200 deviations all are on the sheet: the first on page one, the others in order after the result", async () => {
    const deviations = Array.from({ length: 200 }, (_, at) => {
      const model = sampleDeviations[1 + (at % (sampleDeviations.length - 1))];
      if (model === undefined) throw new Error("the sample has no deviations");
      return { ...model, label: `Characteristic number ${at + 1}` };
    });
    const { pages, text } = await drawn([sampleSheet({ deviations })]);
    const places = deviations.map(({ label }) => text.search(new RegExp(`${label}\\b`)));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    const shown = deviations.filter(({ label }) =>
      new RegExp(`${label}\\b`).test(pages[0]?.text ?? ""),
    ).length;
    expect(shown).toBeGreaterThan(10);
    expect(pages[0]?.text).toContain(`and ${200 - shown} more, on the page after the result`);
    expect(pages[1]?.text).toContain("Scrutineer, name and signature");
    expect(pages[2]?.text).toContain("What is different, continued");
  });

  test("a walk too long for two pages takes more, with no check lost", async () => {
    const sheet = sampleSheet();
    const stations = sheet.stations.map((station) => ({
      ...station,
      checks: Array.from({ length: 30 }, (_, at) => {
        const [check] = station.checks;
        if (check === undefined) throw new Error("the sample has no checks");
        return { ...check, id: `${check.id}-${at}`, short: `Look at ${station.station} ${at}` };
      }),
    }));
    const { pages, text } = await drawn([sampleSheet({ stations })]);
    expect(pages.length).toBeGreaterThan(2);
    for (const { checks } of stations) for (const { short } of checks) expect(text).toContain(short);
    for (const page of pages.slice(1)) expect(page.text).toContain("Þórdís");
  });

  test("300 cars stand in the order given, each with a bookmark to its first page", async () => {
    const models = Array.from({ length: 300 }, (_, at) => plainSheet(300 - at));
    const bytes = await drawSheets(models, { paper: "A4" });
    const { pages, outline, title } = await readBack(bytes, (page) => page % 20 < 2);
    expect(outline).toHaveLength(300);
    expect(pages).toHaveLength(600);
    expect(title).toBe("Scrutineering sheets, 300 cars, Vårløp at Grusvik");
    outline.forEach((item, at) => {
      expect(item.title).toBe(`${300 - at} · ${models[at]?.car.chassis} · ${models[at]?.entry.driver}`);
      expect(item.page).toBe(at * 2);
      if (at % 10 === 0) expect(pages[item.page]?.text).toContain(`No. ${300 - at} · page 1 of 2`);
    });
  }, 60_000);
});

describe("the file", () => {
  test("has title, language, dates of the model and asks viewers to show the title", async () => {
    const read = await drawn([sampleSheet()]);
    expect(read.title).toBe("Scrutineering sheet, No. 42, SV2-0417, Vårløp at Grusvik");
    expect(read.language).toBe("en-GB");
    expect(read.information.CreationDate).toBe("D:20260514183000Z");
    expect(read.viewer).toMatchObject({ DisplayDocTitle: true });
    expect(read.outline).toEqual([{ title: "42 · SV2-0417 · Þórdís Øyängen-Łaszczyńska", page: 0 }]);
  });

  test.each([
    ["A4", 595.28, 841.89],
    ["Letter", 612, 792],
  ] as const)("%s pages have the size of the paper", async (paper, width, height) => {
    const { pages } = await drawn([sampleSheet()], paper);
    for (const page of pages) expect([page.width, page.height]).toEqual([width, height]);
  });

  test("the same models give the same bytes, whatever was drawn in between", async () => {
    const models = [sampleSheet(), plainSheet(9)];
    const first = digest(await drawSheets(models, { paper: "A4" }));
    const sheet = sampleSheet();
    await drawSheets([{ ...sheet, entry: { ...sheet.entry, driver: "Ελευθερία Щербаков" } }], {
      paper: "Letter",
    });
    expect(digest(await drawSheets(models, { paper: "A4" }))).toBe(first);
    expect(digest(await drawSheets(models, { paper: "Letter" }))).not.toBe(first);
  });

  test("another process in another time zone gives the same bytes", async () => {
    const here = digest(await drawSheets([sampleSheet()], { paper: "A4" }));
    const program = new URL("./sample/digest-sample.mts", import.meta.url).pathname;
    const there = execFileSync(process.execPath, ["--import", "tsx", program], {
      env: { PATH: "", TZ: "America/St_Johns" },
      encoding: "utf8",
    });
    expect(there.trim()).toBe(here);
  }, 60_000);
});

describe("what is refused", () => {
  test.each([
    ["an event without entries", [], /no car to draw a sheet for; give at least one model/],
    [
      "a layout it does not know",
      [sampleSheet({ layoutVersion: 1 })],
      /No\. 42: layout 1 .*print the sheet anew/,
    ],
    [
      "a time that is none",
      [sampleSheet({ preparedAt: "yesterday" })],
      /preparedAt is "yesterday"; it must be an ISO/,
    ],
    [
      "a text that is no remark",
      [sampleSheet({ club: "x".repeat(5_001) })],
      /club has 5001 characters \("x+…"\)/,
    ],
  ])("%s is refused in words", async (_, models, message) => {
    await expect(drawSheets(models, { paper: "A4" })).rejects.toThrow(message);
  });

  test("a paper it does not know is refused in words", async () => {
    await expect(drawSheets([sampleSheet()], { paper: "A5" as "A4" })).rejects.toThrow(
      /"A5" is not known; it must be A4 or Letter/,
    );
  });
});
