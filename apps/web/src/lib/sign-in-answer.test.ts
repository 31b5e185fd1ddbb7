import { expect, test } from "vitest";
import { signInProblem } from "./sign-in-answer";

test.each([
  [400, "wrong", "an address that is none"],
  [401, "wrong", "a password that does not belong to it"],
  [403, "elsewhere", "a form that another site sent"],
  [429, "often", "too many tries"],
  [404, "fault", "a door that is not there"],
  [500, "fault", "a database that does not answer"],
  [503, "fault", "a service that is not up"],
])("an answer of %d is told as %s: %s", (status, expected) => {
  expect(signInProblem(status)).toBe(expected);
});
