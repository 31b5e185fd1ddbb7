import { describe, expect, test } from "vitest";
import { assemblyAnchor, carPath, registerPath, sheetsPath } from "./path";

describe("addresses", () => {
  test("keep a chassis number with a slash, a space and a Norse letter in one piece", () => {
    expect(carPath("sandvaer", "SØ 2/0417~2")).toBe("/club/sandvaer/car/S%C3%98%202%2F0417~2");
  });

  test("leave out what was not asked for", () => {
    expect(registerPath("sandvaer", { q: "", series: "mk2" })).toBe("/club/sandvaer/car?series=mk2");
    expect(registerPath("sandvaer")).toBe("/club/sandvaer/car");
  });

  test("name one sheet by its running number", () => {
    expect(sheetsPath("sandvaer", "autumn", { number: "12A", paper: "Letter" })).toBe(
      "/api/club/sandvaer/event/autumn/sheets.pdf?number=12A&paper=Letter",
    );
  });

  test("make an anchor of a club's own assembly", () => {
    expect(assemblyAnchor("own:roof rack")).toBe("assembly-own-roof-rack");
  });
});
