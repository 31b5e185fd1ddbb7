import { expect, test } from "vitest";
import { importCommand } from "./import";

test("an import is taken back without naming a file: the command line asks for none before it has looked at --undo", () => {
  expect(importCommand().registeredArguments.map(({ required }) => required)).toEqual([false]);
});
