import { expect, test } from "vitest";
import { commentStatements, securityStatements } from "./statement";

const note = (comment: string, more = "") => `
/// The club's notes.
model Note {
  /// ${comment}
  id String @id
${more}
  @@map("note")
}`;
const CLUB = `  /// Club.\n  clubId String @map("club_id") @db.Uuid`;

test("only new and changed comments are written, with quotes doubled", () => {
  expect(commentStatements("", note("the note's key; a UUID"))).toEqual([
    `COMMENT ON TABLE "note" IS 'The club''s notes.';`,
    `COMMENT ON COLUMN "note"."id" IS 'the note''s key; a UUID';`,
  ]);
  expect(commentStatements(note("old"), note("new"))).toEqual([`COMMENT ON COLUMN "note"."id" IS 'new';`]);
  expect(commentStatements(note("same"), note("same"))).toEqual([]);
});

test("a column without a comment is named and refused", () => {
  expect(() => commentStatements("", note("key", "  bare String"))).toThrow(/none on: column note\.bare/);
});

test("a table that gains a club is closed to other clubs, once", () => {
  const [enable, policy, ...more] = securityStatements(note("key"), note("key", CLUB));
  expect(enable).toBe('ALTER TABLE "note" ENABLE ROW LEVEL SECURITY;');
  expect(policy).toMatch(
    /^CREATE POLICY club_isolation ON "note" USING \(club_id = NULLIF\(.*\) WITH CHECK \(club_id/,
  );
  expect(more).toEqual([]);
  expect(securityStatements(note("key", CLUB), note("key", CLUB))).toEqual([]);
  expect(securityStatements("", note("key"))).toEqual([]);
});
