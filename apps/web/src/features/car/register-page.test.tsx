import type { Condition } from "@trunnion/register";
import { describe, expect, test, vi } from "vitest";
import { markup, readText } from "../../test/markup";
import { RegisterPage, type RegisterPageProps } from "./register-page";

// The server's own half of a form is not drawn.
vi.mock("../filter/filter-action", () => ({ saveFilter: async () => undefined }));

const club = { slug: "sandvaer", name: "Sandvær Register" };
const row = {
  reference: "S2-0417",
  chassis: "S2-0417",
  claim: 1,
  series: "Series 2 coupé",
  built: "",
  colour: "Rød",
  registration: "",
  status: "inUse" as const,
  deviating: 3,
};
const nothing: RegisterPageProps = {
  club,
  search: {},
  view: "table",
  saved: [],
  list: { total: 0, unknown: 0, rows: [] },
  pages: {},
};
const one: RegisterPageProps = {
  ...nothing,
  search: { q: "0417" },
  list: { total: 1, unknown: 0, rows: [row] },
};

const is: Condition = { op: "recorded", characteristic: "front.camber" };
const said = "front camber is recorded";
const condition = { is, said, parts: [{ is, said }] };
const narrowed: RegisterPageProps = {
  ...nothing,
  search: { q: "04", where: "recorded_front.camber" },
  list: { total: 1_240, unknown: 7, rows: [row], condition },
};

describe("the register", () => {
  test("links each car by its plate and says what is not recorded", () => {
    expect(markup(<RegisterPage {...one} />)).toContain('href="/club/sandvaer/car/S2-0417"');
    expect(readText(<RegisterPage {...one} />)).toContain(
      "Series 2 coupé Built not recorded Rød Registration not recorded In use 3 deviations",
    );
  });

  test("says that nothing fits, or that nothing is there yet", () => {
    expect(readText(<RegisterPage {...nothing} search={{ q: "zz" }} />)).toContain("No car fits.");
    expect(readText(<RegisterPage {...nothing} />)).toContain("import register.csv --club sandvaer");
  });
});

describe("words that name a characteristic", () => {
  test("are said to, with the way to its spread, whether or not a car is found", () => {
    const page = <RegisterPage {...nothing} search={{ q: "rear anti-roll bar dia" }} />;
    expect(markup(page)).toContain('href="/club/sandvaer/fleet/characteristic/rear.antiRollBar.diameter"');
    expect(readText(page)).toContain("“rear anti-roll bar dia” is also what a characteristic is called");
    expect(readText(<RegisterPage {...one} />)).not.toContain("is also what");
  });

  test("name the club's own too, and only a few are told one by one", () => {
    const straps = {
      key: "hood.straps",
      label: "Damper straps",
      assembly: "body",
      sided: false,
      help: "Straps over the bonnet.",
      setting: false,
      removable: true,
      kind: "text",
      maximumLength: 40,
    } as const;
    const text = readText(<RegisterPage {...nothing} search={{ q: "damper" }} own={[straps]} />);
    expect(text).toContain("Damper straps");
    expect(text).toMatch(/characteristics are called.* and \d+ more\./);
  });
});

describe("a few cars found", () => {
  const rows = [row, { ...row, reference: "S2-0418", chassis: "S2-0418" }];

  test("are put side by side in one press, and not where some are on another page", () => {
    const found = (total: number) =>
      markup(<RegisterPage {...one} list={{ total, unknown: 0, rows: total === 1 ? [row] : rows }} />);
    expect(found(2)).toContain('href="/club/sandvaer/fleet/compare?cars=S2-0417%2C+S2-0418"');
    expect(found(60)).not.toMatch(/These \d+ cars side by side/);
    expect(found(1)).not.toMatch(/These \d+ cars side by side/);
  });

  test("are ticked one by one, each by the name it has in addresses, and sent by a plain form", () => {
    for (const view of ["table", "cards"] as const) {
      const page = markup(<RegisterPage {...one} view={view} list={{ total: 60, unknown: 0, rows }} />);
      expect(page).toMatch(/<form id="ticked"[^>]* action="\/club\/sandvaer\/fleet\/compare" method="get"/);
      for (const { reference } of rows)
        expect(page).toMatch(
          new RegExp(
            `<input type="checkbox" form="ticked" aria-label="Tick ${reference}" name="cars" value="${reference}"`,
          ),
        );
    }
  });
});

describe("a search that finds nothing", () => {
  test("says what comes nearest, each with its address", () => {
    const list: RegisterPageProps["list"] = {
      ...nothing.list,
      nearest: [
        { kind: "word", without: "fjord", search: "drilled", cars: 12 },
        { kind: "condition", cars: 1 },
        { kind: "number", reference: "S2-0416", chassis: "S2-0416" },
      ],
    };
    const search = { q: "fjord drilled", where: "recorded_front.camber", order: "built" };
    const page = <RegisterPage {...nothing} search={search} list={list} />;
    expect(readText(page)).toContain("Without “fjord”: 12 cars");
    expect(readText(page)).toContain("Without the condition: 1 car ");
    expect(markup(page)).toContain("car?q=drilled&amp;where=recorded_front.camber&amp;order=built");
    expect(markup(page)).toContain('car?q=fjord+drilled&amp;order=built"');
    expect(markup(page)).toContain('href="/club/sandvaer/car/S2-0416"');
  });

  test("says which words were taken for a series, and which were passed over", () => {
    const list = { ...nothing.list, named: ["series 2"], passedOver: ["x", "y"] };
    const text = readText(<RegisterPage {...nothing} search={{ q: "zz" }} list={list} />);
    expect(text).toContain("“series 2” is taken for the series.");
    expect(text).toContain("not: “x”, “y”.");
  });
});

describe("the register by a condition", () => {
  test("says it in words, how many fit, and of how many the record does not say, with the way to those", () => {
    const text = readText(<RegisterPage {...narrowed} />);
    expect(text).toContain("1,240 cars found");
    expect(text).toMatch(/Cars of which front camber is recorded ?\./);
    expect(text).toContain("Of 7 more cars the record does not say.");
    expect(markup(<RegisterPage {...narrowed} />)).toContain(
      'href="/club/sandvaer/car?q=04&amp;where=recorded_front.camber&amp;show=unknown"',
    );
  });

  test("shows those that are not known as such, with the way back", () => {
    const text = readText(<RegisterPage {...narrowed} search={{ ...narrowed.search, show: "unknown" }} />);
    expect(text).toContain("7 cars not known");
    expect(text).toContain("Unknown is not a no");
    expect(text).toContain("1,240 cars fit for certain");
  });

  test("keeps the condition when one searches on", () => {
    expect(markup(<RegisterPage {...narrowed} />)).toContain(
      '<input type="hidden" form="find-cars" name="where" value="recorded_front.camber"/>',
    );
  });

  test("that cannot be read is told, and no car is shown for one that fits", () => {
    const text = readText(
      <RegisterPage {...nothing} search={{ where: "recorded" }} problem="it was cut short" />,
    );
    expect(text).toContain("The filter in this address cannot be used: it was cut short.");
    expect(text).not.toContain("No car fits");
  });

  test("offers the saved filters by their names", () => {
    const filter = {
      id: "1",
      name: "Stiff & low",
      condition: is,
      shared: true,
      own: false,
      mayChange: false,
    };
    const html = markup(<RegisterPage {...nothing} saved={[filter]} />);
    expect(html).toContain('href="/club/sandvaer/car?filter=Stiff+%26+low"');
  });
});

describe("the counts beside the list", () => {
  const facets = {
    series: [{ slug: "series-2", name: "Series 2", cars: 300 }],
    status: [{ status: "inUse" as const, cars: 1_200 }],
    decade: [{ decade: null, cars: 4 }],
    verdict: [],
    modified: [{ assembly: "brakes" as const, cars: 40 }],
  };
  const counted: RegisterPageProps = { ...narrowed, list: { ...narrowed.list, facets, beside: is } };

  test("narrow the list and keep what it was narrowed by before", () => {
    const html = markup(<RegisterPage {...counted} />);
    expect(html).toContain(
      'href="/club/sandvaer/car?q=04&amp;where=all2_recorded_front.camber_modified1_brakes"',
    );
    expect(readText(<RegisterPage {...counted} />)).toContain("In use 1,200");
    expect(readText(<RegisterPage {...counted} />)).toContain("decade not known 4");
  });

  test("are lifted by the same link, which says so, and by their word among what narrows the list", () => {
    const picked: Condition = { op: "modified", in: ["brakes"] };
    const both: Condition = { op: "all", of: [is, picked] };
    const parts = [
      { is, said },
      { is: picked, said: "brakes modified" },
    ];
    const list = { ...counted.list, condition: { is: both, said: "both", parts }, beside: both };
    const html = markup(<RegisterPage {...counted} list={list} />);
    expect(html).toMatch(
      /href="\/club\/sandvaer\/car\?q=04&amp;where=recorded_front.camber"[^>]*aria-current="true"/,
    );
    expect(html).toMatch(
      /where=modified1_brakes"[^>]*><span class="sr-only">Take off: <\/span>front camber is recorded/,
    );
  });

  test("beside a saved filter keep its name, and take its place where what it says itself is lifted", () => {
    const picked: Condition = { op: "status", in: ["inUse"] };
    const search = { filter: "Aligned", where: "status1_inUse" };
    const parts = [
      { is, said },
      { is: picked, said: "in use" },
    ];
    const list = {
      ...counted.list,
      condition: { is: { op: "all" as const, of: [is, picked] }, said: "both", parts },
      beside: picked,
    };
    const html = markup(<RegisterPage {...counted} search={search} list={list} />);
    expect(html).toMatch(
      /href="\/club\/sandvaer\/car\?filter=Aligned"[^>]*><span class="sr-only">Take off: <\/span>in use/,
    );
    expect(html).toMatch(
      /href="\/club\/sandvaer\/car\?where=status1_inUse"[^>]*><span class="sr-only">Take off: <\/span>front camber/,
    );
  });
});

describe("as cards", () => {
  const photo = { id: "e1", quarterTurns: 1, caption: "From the left" };
  const cards: RegisterPageProps = {
    ...one,
    view: "cards",
    list: { ...one.list, rows: [{ ...row, photo }] },
  };

  test("each car has its plate, what is known of it and its photograph, small and upright", () => {
    const html = markup(<RegisterPage {...cards} />);
    expect(html).toContain('href="/club/sandvaer/car/S2-0417"');
    expect(html).toMatch(/<img src="\/api\/club\/sandvaer\/evidence\/e1\/320-1.webp" alt="From the left"/);
    expect(readText(<RegisterPage {...cards} />)).toContain("Series 2 coupé · in use Rød");
  });

  test("lead back to the table, and the file is of the same cars in the same order with the same columns", () => {
    const search = { q: "0417", order: "built", col: "front.camber", view: "cards" };
    const html = markup(<RegisterPage {...cards} search={search} />);
    expect(html).toContain(
      'href="/club/sandvaer/car?q=0417&amp;order=built&amp;col=front.camber&amp;view=table"',
    );
    expect(html).toContain("/list/found.csv?q=0417&amp;order=built&amp;col=front.camber");
  });
});

describe("words that nobody has", () => {
  test("are told with those they were taken for", () => {
    const corrections = [{ word: "grondla", as: ["grondal"] }];
    expect(readText(<RegisterPage {...one} list={{ ...one.list, corrections }} />)).toContain(
      "No car has “grondla”: taken for grondal",
    );
  });
});

describe("the register by what cars have of a characteristic", () => {
  const list: RegisterPageProps["list"] = {
    ...one.list,
    columns: [{ key: "front.camber", label: "Front camber", kind: "quantity", orders: true }],
  };
  const page = (order: string) => (
    <RegisterPage {...one} search={{ col: "front.camber", order }} list={list} />
  );

  test.each([
    ["up.front.camber", "ascending", "down.front.camber", "lowest first"],
    ["down.front.camber", "descending", "up.front.camber", "highest first"],
  ])("%s says so to who hears it, and leads the other way round", (order, said, other, words) => {
    const html = markup(page(order));
    expect(html).toMatch(new RegExp(`<th scope="col" aria-sort="${said}"><a href="[^"]*order=${other}"`));
    expect(html.match(/aria-sort/g)).toHaveLength(1);
    expect(readText(page(order))).toContain(`Cars of the register, by Front camber, ${words}`);
  });

  test("is gone with its column", () => {
    expect(markup(page("up.front.camber"))).toMatch(/href="\/club\/sandvaer\/car"[^>]*>Without Front camber/);
  });

  test("says that a page behind the last one has no cars, not that none fits", () => {
    const text = readText(<RegisterPage {...one} list={{ ...list, rows: [] }} pages={{ first: "/first" }} />);
    expect(text).toContain("No car comes after the one this address names.");
    expect(text).not.toContain("No car fits");
  });
});
