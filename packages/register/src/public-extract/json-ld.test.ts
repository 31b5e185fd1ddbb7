import { describe, expect, test } from "vitest";
import { parsePartialDate } from "../identity/partial-date";
import type { ExtractCar } from "./extract-car";
import { carJsonLd, isoOfPartial, listJsonLd, scriptText } from "./json-ld";

const today = "2026-11-25";
function date(text: string) {
  const parsed = parsePartialDate(text, { today });
  if (!parsed.ok) throw new Error(parsed.problem.message);
  return parsed.date;
}

const car: ExtractCar = {
  reference: "S2-0211",
  chassis: "S2-0211",
  marque: "Sandvær",
  series: "Series 2",
  built: date("3/72"),
  status: "in use",
  numbers: [{ kind: "engine", number: "SV 1234" }],
  options: ["GT"],
  today: [
    { characteristic: "body.colour", label: "Colour", side: "whole", text: "fjord blue" },
    {
      characteristic: "front.camber",
      label: "Front camber",
      side: "left",
      text: "-0°20'",
      si: -0.0058,
      unit: "rad",
    },
  ],
};

describe("a date in the extract", () => {
  test.each([
    ["12.3.1972", "1972-03-12"],
    ["March 1972", "1972-03"],
    ["1971", "1971"],
    ["c. 1971", undefined],
    ["before March 1972", undefined],
    ["1971/72", undefined],
  ])("%s is %s: never sharper than it is known (ISO 8601 reduced precision)", (text, iso) => {
    expect(isoOfPartial(date(text))).toBe(iso);
  });
});

// Terms: schema.org/Car, /IndividualProduct, /PropertyValue, /ItemList; from memory.
describe("a car in schema.org's words", () => {
  const node = carJsonLd(car, "https://club.example/extract/sandvaer/S2-0211");

  test("is a Car with its chassis number as serial number, not as a VIN it has not", () => {
    expect(node["@type"]).toContain("Car");
    expect(node.serialNumber).toBe("S2-0211");
    expect(node).not.toHaveProperty("vehicleIdentificationNumber");
    expect(node.productionDate).toBe("1972-03");
    expect(node.color).toBe("fjord blue");
  });

  test("gives a quantity in SI with its unit, and as it was written", () => {
    expect(node.additionalProperty).toContainEqual({
      "@type": "PropertyValue",
      propertyID: "front.camber.left",
      name: "Front camber, left (today)",
      value: -0.0058,
      unitText: "rad",
      description: "-0°20'",
    });
  });

  test("leaves out what is not published", () => {
    const bare = carJsonLd(
      { reference: "a", chassis: "a", marque: "", series: "Series 1" },
      "https://x.example/a",
    );
    expect(Object.keys(bare).sort()).toEqual([
      "@context",
      "@id",
      "@type",
      "model",
      "name",
      "serialNumber",
      "url",
    ]);
  });

  test("cannot break out of its script element", () => {
    const text = scriptText(carJsonLd({ ...car, series: "</script><!--<script>" }, "https://x.example/a"));
    expect(text).not.toMatch(/[<>&]/);
    expect(JSON.parse(text)).toMatchObject({ model: "</script><!--<script>" });
  });
});

test("a list says how many there are in all, and numbers those on the page", () => {
  const node = listJsonLd({
    name: "Cars",
    address: "https://x.example",
    total: 412,
    cars: [{ name: "a", address: "https://x.example/a" }],
  });
  expect(node).toMatchObject({
    numberOfItems: 412,
    itemListElement: [{ position: 1, url: "https://x.example/a" }],
  });
});
