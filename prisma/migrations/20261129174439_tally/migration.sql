-- CreateEnum
CREATE TYPE "TallyAbout" AS ENUM ('value', 'known', 'differing', 'told', 'changed', 'due', 'car', 'verdict', 'modified', 'month', 'thickness');

-- AlterTable
ALTER TABLE "stale_car" DROP CONSTRAINT "stale_car_pkey",
ADD CONSTRAINT "stale_car_pkey" PRIMARY KEY ("club_id", "car_id", "id");

-- CreateTable
CREATE TABLE "tally" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" BIGINT NOT NULL,
    "about" "TallyAbout" NOT NULL,
    "series_id" UUID,
    "characteristic" TEXT NOT NULL,
    "side" "Side",
    "value_kind" "ValueKind",
    "number" DOUBLE PRECISION,
    "resolution" DOUBLE PRECISION,
    "text" TEXT,
    "entered" TEXT,
    "standing" TEXT,
    "year" INTEGER,
    "count" INTEGER NOT NULL,

    CONSTRAINT "tally_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "car_tally" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "car_id" UUID NOT NULL,
    "ids" BIGINT[],

    CONSTRAINT "car_tally_pkey" PRIMARY KEY ("club_id","car_id")
);

-- CreateIndex
CREATE INDEX "tally_club_id_about_characteristic_series_id_idx" ON "tally"("club_id", "about", "characteristic", "series_id");

COMMENT ON TYPE "TallyAbout" IS 'What a row of tallies counts.';
COMMENT ON TABLE "tally" IS 'How many there are of one kind, over the cars of one series: kept as cars'' summaries are worked out anew.';
COMMENT ON COLUMN "tally"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "tally"."id" IS 'Hash of what is counted: all columns but the count.';
COMMENT ON COLUMN "tally"."about" IS 'What is counted.';
COMMENT ON COLUMN "tally"."series_id" IS 'Series of the cars; empty for those whose series is not settled.';
COMMENT ON COLUMN "tally"."characteristic" IS 'Characteristic''s key or kind of dated item; empty where cars are counted as a whole.';
COMMENT ON COLUMN "tally"."side" IS 'Side.';
COMMENT ON COLUMN "tally"."value_kind" IS 'Value: kind.';
COMMENT ON COLUMN "tally"."number" IS 'Value: SI number of a quantity; or how many values a record has.';
COMMENT ON COLUMN "tally"."resolution" IS 'Value: resolution the entry implies, SI.';
COMMENT ON COLUMN "tally"."text" IS 'Value: code of a choice, canonical designation, text, ISO date; or what else is counted: status, verdict, assembly.';
COMMENT ON COLUMN "tally"."entered" IS 'Value: what was entered, to the letter.';
COMMENT ON COLUMN "tally"."standing" IS 'How it stands against factory, or what else keeps such rows apart.';
COMMENT ON COLUMN "tally"."year" IS 'Year or decade.';
COMMENT ON COLUMN "tally"."count" IS 'How many there are.';
COMMENT ON TABLE "car_tally" IS 'The rows of tallies in which one car is counted, so that it can be taken out of them again.';
COMMENT ON COLUMN "car_tally"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "car_tally"."car_id" IS 'The car. No foreign key, as with its texts.';
COMMENT ON COLUMN "car_tally"."ids" IS 'Ids of the rows, each as often as the car is counted in it.';

ALTER TABLE "tally" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "tally" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "car_tally" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "car_tally" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- Only counts change, in no index: room for them beside.
ALTER TABLE "tally" SET (fillfactor = 70);

-- The thinnest records of cars that are not gone, those in use first.
CREATE INDEX "car_summary_thin_idx" ON "car_summary" ("club_id", ("status" = 'inUse') DESC, "values", "chassis_key", "claim")
  WHERE "status" NOT IN ('dismantled', 'destroyed');
-- Numbers that more than one record claims.
CREATE INDEX "car_further_claim_idx" ON "car" ("club_id", "chassis_key") WHERE "claim" > 1;
-- What falls due, day by day.
CREATE INDEX "current_value_day_idx" ON "current_value" ("club_id", "characteristic", "text", "car_id") WHERE "value_kind" = 'date';
CREATE INDEX "dated_item_day_idx" ON "dated_item" ("club_id", "valid_to", "id") WHERE "replaced_at" IS NULL;

-- Readings and changes are written and taken away in the transaction of their sheet or modification, and never changed.
DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['setting_sheet', 'dated_item'] LOOP
    EXECUTE format('CREATE TRIGGER stale_after_insert AFTER INSERT ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_stale_cars(''of car'')', name);
    EXECUTE format('CREATE TRIGGER stale_after_update AFTER UPDATE ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_stale_cars(''of car'')', name);
    EXECUTE format('CREATE TRIGGER stale_after_delete AFTER DELETE ON %I REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_stale_cars(''of car'')', name);
  END LOOP;
END $$;

CREATE OR REPLACE FUNCTION tell_planner() RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  ANALYZE car, car_identity, car_status_span, car_option, keepership, as_built_value, submission, modification,
    modification_change, setting_sheet, reading, current_value, stale_car, car_text, car_summary, car_tally, tally;
END $$;

-- Word by word, and by the table only words that are not of plain letters: the table is gone through for every letter, and
-- 3,000 texts of 380 characters took 1.9 s.
CREATE FUNCTION folded_words(text) RETURNS text
LANGUAGE sql IMMUTABLE PARALLEL SAFE
RETURN (SELECT string_agg(CASE WHEN octet_length(word) = length(word) THEN lower(word COLLATE "C")
    ELSE replace(replace(replace(replace(translate(normalize(word, NFKD),
  U&'ABCDEFGHIJKLMNOPQRSTUVWXYZ\00D8\00F8\0141\0142\0110\0111\00D0\00F0\0126\0127\0166\0167\014A\014B\0131\00C6\0152\00DE\1E9E\018F\0391\0392\0393\0394\0395\0396\0397\0398\0399\039A\039B\039C\039D\039E\039F\03A0\03A1\03A3\03A4\03A5\03A6\03A7\03A8\03A9\03C2\0410\0411\0412\0413\0414\0415\0416\0417\0418\041A\041B\041C\041D\041E\041F\0420\0421\0422\0423\0424\0425\0426\0427\0428\0429\042A\042B\042C\042D\042E\042F\0402\0404\0405\0406\0408\0409\040A\040B\040F\0490\2010\2011\2012\2013\2014\2212\2018\2019\02BC\201C\201D\201E\2044\00D7\0300\0301\0302\0303\0304\0305\0306\0307\0308\0309\030A\030B\030C\030D\030E\030F\0310\0311\0312\0313\0314\0315\0316\0317\0318\0319\031A\031B\031C\031D\031E\031F\0320\0321\0322\0323\0324\0325\0326\0327\0328\0329\032A\032B\032C\032D\032E\032F\0330\0331\0332\0333\0334\0335\0336\0337\0338\0339\033A\033B\033C\033D\033E\033F\0340\0341\0342\0343\0344\0345\0346\0347\0348\0349\034A\034B\034C\034D\034E\034F\0350\0351\0352\0353\0354\0355\0356\0357\0358\0359\035A\035B\035C\035D\035E\035F\0360\0361\0362\0363\0364\0365\0366\0367\0368\0369\036A\036B\036C\036D\036E\036F',
  U&'abcdefghijklmnopqrstuvwxyzoollddddhhttnni\00E6\0153\00FE\00DF\0259\03B1\03B2\03B3\03B4\03B5\03B6\03B7\03B8\03B9\03BA\03BB\03BC\03BD\03BE\03BF\03C0\03C1\03C3\03C4\03C5\03C6\03C7\03C8\03C9\03C3\0430\0431\0432\0433\0434\0435\0436\0437\0438\043A\043B\043C\043D\043E\043F\0440\0441\0442\0443\0444\0445\0446\0447\0448\0449\044A\044B\044C\044D\044E\044F\0452\0454\0455\0456\0458\0459\045A\045B\045F\0491------''''''"""/x'),
  U&'\00E6', 'ae'), U&'\0153', 'oe'), U&'\00FE', 'th'), U&'\00DF', 'ss') END, ' ' ORDER BY place)
  FROM string_to_table($1, ' ') WITH ORDINALITY AS part(word, place));
COMMENT ON FUNCTION folded_words(text) IS 'folded_text, of a text that has other than plain letters.';
CREATE OR REPLACE FUNCTION folded_text(text) RETURNS text
LANGUAGE sql IMMUTABLE PARALLEL SAFE
RETURN CASE WHEN octet_length($1) = length($1) THEN lower($1 COLLATE "C") ELSE folded_words($1) END;

-- Every car is counted anew.
INSERT INTO stale_car (club_id, id, car_id) SELECT club_id, gen_random_uuid(), id FROM car;
