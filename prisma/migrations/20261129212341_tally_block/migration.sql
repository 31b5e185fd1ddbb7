-- What is counted has other columns now, and every car a place: all is worked out anew.
DELETE FROM "tally";
DELETE FROM "car_tally";
DELETE FROM "car_summary";
ALTER TABLE "tally" DROP CONSTRAINT "tally_about";
ALTER TABLE "tally" ADD CONSTRAINT "tally_about" CHECK ("about" IN ('value', 'known', 'differing', 'told', 'changed', 'due', 'car',
  'verdict', 'modified', 'month', 'built', 'thickness'));

-- AlterTable
ALTER TABLE "car_summary" ADD COLUMN     "place" INTEGER NOT NULL;

-- CreateTable
CREATE TABLE "tally_block" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "tally_id" BIGINT NOT NULL,
    "block" INTEGER NOT NULL,
    "cars" BIT(16384) NOT NULL,

    CONSTRAINT "tally_block_pkey" PRIMARY KEY ("club_id","tally_id","block")
);

-- CreateIndex
-- In the order of numbers with what finds a car's bit, so that a page of those that fit is found in the index alone. (The
-- models know no INCLUDE; the database has it.)
CREATE INDEX "car_summary_club_id_chassis_key_claim_idx" ON "car_summary"("club_id", "chassis_key", "claim") INCLUDE ("place", "car_id");

-- CreateIndex
CREATE UNIQUE INDEX "car_summary_club_id_place_key" ON "car_summary"("club_id", "place");

COMMENT ON COLUMN "car_summary"."place" IS 'Its place among the bits of the tallies'' blocks; it keeps it for as long as it is a car.';
COMMENT ON TABLE "tally_block" IS 'Which cars are counted in one row of tallies: a bit for each of 16,384 places, so that a question about every car is
answered by AND and OR of blocks. Of what questions are asked by alone: values, cars as a whole, verdicts, assemblies, days.';
COMMENT ON COLUMN "tally_block"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "tally_block"."tally_id" IS 'The row of tallies.';
COMMENT ON COLUMN "tally_block"."block" IS 'Which 16,384 places.';
COMMENT ON COLUMN "tally_block"."cars" IS 'The cars, a bit a place.';

ALTER TABLE "tally_block" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "tally_block" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- Most blocks have few cars in them and pack to a tenth (2 KB is the least that is packed at all); kept in the row.
ALTER TABLE "tally_block" ALTER COLUMN "cars" SET STORAGE MAIN;
ALTER TABLE "tally_block" SET (toast_tuple_target = 128, fillfactor = 80);

CREATE OR REPLACE FUNCTION tell_planner() RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  ANALYZE car, car_identity, car_status_span, car_option, keepership, as_built_value, submission, modification,
    modification_change, setting_sheet, reading, current_value, stale_car, car_text, car_summary, car_tally, tally, tally_block;
END $$;

INSERT INTO "stale_car" ("club_id", "id", "car_id") SELECT "club_id", gen_random_uuid(), "id" FROM "car";
