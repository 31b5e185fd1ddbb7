-- What is told of by year has blocks now, and blocks are kept whatever the series: all is counted anew.
DELETE FROM "tally";
DELETE FROM "tally_block";
DELETE FROM "car_tally";

-- AlterTable
ALTER TABLE "tally" ADD COLUMN     "sort" BIGINT NOT NULL;

-- AlterTable
ALTER TABLE "tally_block" RENAME COLUMN "tally_id" TO "sort";

-- CreateIndex
CREATE INDEX "tally_club_id_sort_idx" ON "tally"("club_id", "sort");

COMMENT ON COLUMN "tally"."sort" IS 'Hash of the same whatever the series, of cars as a whole with it: what the blocks of its cars are kept under.';
COMMENT ON TABLE "tally_block" IS 'Which cars are counted in the rows of tallies of one sort: a bit for each of 16,384 places, so that a question about every
car is answered by AND and OR of blocks. Of what questions are asked by alone: not of labels'' days, months, records'' thickness.';
COMMENT ON COLUMN "tally_block"."sort" IS 'The sort of tallies.';

INSERT INTO "stale_car" ("club_id", "id", "car_id") SELECT "club_id", gen_random_uuid(), "id" FROM "car";
