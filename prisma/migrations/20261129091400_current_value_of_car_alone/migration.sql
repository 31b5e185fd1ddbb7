-- What only the specification says is no knowledge of a car. Kept per car it was nine rows of ten, each a copy of the
-- specification, which no condition, list or export may read; it is derived from the specification where a page shows it.
DELETE FROM "current_value" WHERE origin = 'specification';
ALTER TABLE "current_value" ADD CONSTRAINT "current_value_known_of_the_car" CHECK (origin <> 'specification');
COMMENT ON COLUMN "current_value"."origin" IS 'As built, modification or reading; what only the specification says is not kept here.';
