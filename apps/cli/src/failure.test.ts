import { CalcRefusal } from "@trunnion/calc";
import { MigrationError } from "@trunnion/db/admin";
import { refused } from "@trunnion/register";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { z } from "zod";
import { reportFailure } from "./failure";
import { OutputFault } from "./file";

let out = "";
let err = "";

beforeEach(() => {
  out = "";
  err = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    out += text;
    return true;
  });
  vi.spyOn(process.stderr, "write").mockImplementation((text) => {
    err += text;
    return true;
  });
});
afterEach(() => {
  vi.restoreAllMocks();
});

/** What a piece of work throws. */
function thrown(work: () => unknown): unknown {
  try {
    work();
  } catch (error) {
    return error;
  }
  throw new Error("nothing was thrown");
}

describe("a failure that the user can mend", () => {
  const known = ["autumn-2026"];
  const zod = z.object({ asOf: z.string().refine(() => false, "expected a day up to 2026-11-25") });
  test.each([
    [
      "a refusal",
      refused("EVENT_NOT_FOUND", { event: "autum", known }),
      "EVENT_NOT_FOUND",
      /There is no event "autum"/,
      /Events: autumn-2026\./,
    ],
    [
      "input that cannot be read",
      thrown(() => zod.parse({ asOf: "2999-01-01" })),
      "INPUT_NOT_READ",
      /expected a day up to 2026-11-25\s+→ at asOf/,
      /Mend the places named/,
    ],
    [
      "a migration",
      new MigrationError("it is newer"),
      "MigrationError",
      /it is newer/,
      /When it does not start/,
    ],
    ["a file", new OutputFault("/x/y cannot be written"), "FILE_NOT_WRITTEN", /\/x\/y/, /Name another/],
  ])("(%s) says what was wrong, then what to do, and exits with 1", (_, error, code, what, remedy) => {
    expect(reportFailure(error, false)).toBe(1);
    expect(out).toBe("");
    const [first = "", ...rest] = err.trimEnd().split("\n");
    expect(first).toMatch(/^trunnion: /);
    expect(rest.at(-1)).toMatch(/^ {2}\S/);
    expect(err).toMatch(what);
    expect(err).toMatch(remedy);
    expect(err).not.toMatch(/\.ts:\d|at \w+ \(/);
    expect(reportFailure(error, true)).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ ok: false, error: { code, what: expect.stringMatching(what) } });
  });

  test("of the calculator is told under its own code", () => {
    const error = new CalcRefusal("OUT_OF_REACH", "no shim reaches 4°; the most is 1°30'", "target");
    expect(reportFailure(error, true)).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ error: { code: "OUT_OF_REACH", what: error.message } });
  });
});

describe("a bug", () => {
  test("is told whole on standard error and by its code only as JSON, and exits with 70", () => {
    const error = new Error("boom SELECT");
    expect(reportFailure(error, false)).toBe(70);
    expect(err).toMatch(
      /^trunnion: this is a fault of the program, not yours\.\nError: boom SELECT\n.*failure\.test\.ts/,
    );
    expect(out).toBe("");
    expect(reportFailure(error, true)).toBe(70);
    expect(JSON.parse(out)).toEqual({ ok: false, error: { code: "BUG" } });
  });

  test.each([["a text"], [undefined], [null]])("thrown as %j is told too", (error) => {
    expect(reportFailure(error, false)).toBe(70);
    expect(err).toContain(String(error));
  });
});
