-- Comparing enumerations is not leakproof, so under row-level security no index serves them: whoever asked for one kind of
-- count read every tally of every club.
ALTER TABLE "tally" ALTER COLUMN "about" TYPE TEXT USING "about"::text;
ALTER TABLE "tally" ADD CONSTRAINT "tally_about" CHECK ("about" IN ('value', 'known', 'differing', 'told', 'changed', 'due', 'car',
  'verdict', 'modified', 'month', 'thickness'));
DROP TYPE "TallyAbout";
COMMENT ON COLUMN "tally"."about" IS 'What is counted (`TallyAbout` of the service). No enumeration: comparing those is not leakproof, so no index would serve.';

-- What is counted has another hash now.
DELETE FROM "tally";
DELETE FROM "car_tally";
INSERT INTO "stale_car" ("club_id", "id", "car_id") SELECT "club_id", gen_random_uuid(), "id" FROM "car";
