import { expect, test } from "vitest";
import { describe as describeModels } from "./model";

const MODELS = `
datasource db { provider = "postgresql" }

/// A tyre as fitted;
/// "as found" counts too.
model FittedTyre {
  /// Club this row belongs to.
  clubId  String  @map("club_id") @db.Uuid
  /// In millimetres.
  width   Int?
  // not a doc comment
  plain   String
  make    Make?   @relation(fields: [clubId, width], references: [clubId, width])
  worn    Side[]

  @@id([clubId, width])
  @@map("fitted_tyre")
}

model Make {
  tyres FittedTyre[]
  /// The name.
  name  String @id
}

/// Which side.
enum Side {
  left
  right
}
`;

test("tables, columns and enumerations come under their names in the database, with their comments", () => {
  expect(describeModels(MODELS)).toEqual([
    { kind: "table", name: "fitted_tyre", column: "", comment: 'A tyre as fitted;\n"as found" counts too.' },
    { kind: "column", name: "fitted_tyre", column: "club_id", comment: "Club this row belongs to." },
    { kind: "column", name: "fitted_tyre", column: "width", comment: "In millimetres." },
    { kind: "column", name: "fitted_tyre", column: "plain", comment: "" },
    { kind: "column", name: "fitted_tyre", column: "worn", comment: "" },
    { kind: "table", name: "Make", column: "", comment: "" },
    { kind: "column", name: "Make", column: "name", comment: "The name." },
    { kind: "type", name: "Side", column: "", comment: "Which side." },
  ]);
});
