import { describe, expect, test } from "vitest";
import { markup, readText } from "../../test/markup";
import { ClubChoice } from "./club-choice";
import { HomePage } from "./home-page";

const club = { slug: "sandvaer", name: "Sandvær Register" };
const ownCar = { reference: "S2-0417", chassis: "S2-0417", series: "Series 2 coupé", deviating: 3 };

describe("where the day begins", () => {
  test("an owner sees their own car first, and no empty list of tasks", () => {
    const page = (
      <HomePage
        club={club}
        roles={["owner"]}
        today="25 November 2026"
        facts={{ cars: 412 }}
        ownCars={[ownCar]}
      />
    );
    expect(readText(page)).toMatch(/Your car S2-0417 Series 2 coupé 3 deviations/);
    expect(markup(page)).toContain('href="/club/sandvaer/car/S2-0417"');
    expect(readText(page)).not.toContain("What comes next");
  });

  test("who has nothing to do is told so", () => {
    const page = (
      <HomePage club={club} roles={["owner"]} today="25 November 2026" facts={{ cars: 412 }} ownCars={[]} />
    );
    expect(readText(page)).toContain("Nothing is waiting for you.");
  });
});

test("who belongs to no club is told how to come into one", () => {
  expect(readText(<ClubChoice clubs={[]} />)).toContain("Ask a club's registrar for an invitation.");
});
