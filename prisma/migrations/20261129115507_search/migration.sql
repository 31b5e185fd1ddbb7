-- CreateEnum
CREATE TYPE "TextSection" AS ENUM ('number', 'colour', 'part', 'modification', 'remark', 'history', 'evidence', 'keeper');

-- CreateTable
CREATE TABLE "car_text" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "car_id" UUID NOT NULL,
    "section" "TextSection" NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "car_text_pkey" PRIMARY KEY ("club_id","car_id","section")
);

-- CreateTable
CREATE TABLE "car_summary" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "car_id" UUID NOT NULL,
    "chassis_key" TEXT NOT NULL,
    "claim" INTEGER NOT NULL,
    "series_id" UUID,
    "status" "CarStatus" NOT NULL,
    "built" DATE NOT NULL,
    "decade" INTEGER,
    "verdicts" "Verdict"[],
    "modified" TEXT[],
    "differing" INTEGER NOT NULL,

    CONSTRAINT "car_summary_pkey" PRIMARY KEY ("club_id","car_id")
);

-- CreateTable
CREATE TABLE "stale_car" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,

    CONSTRAINT "stale_car_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "club_word" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "word" TEXT NOT NULL,

    CONSTRAINT "club_word_pkey" PRIMARY KEY ("club_id","word")
);

-- CreateIndex
CREATE INDEX "car_text_club_id_text_idx" ON "car_text" USING GIN ("club_id" uuid_ops, "text" gin_trgm_ops);

-- CreateIndex
CREATE INDEX "car_summary_club_id_built_chassis_key_claim_idx" ON "car_summary"("club_id", "built", "chassis_key", "claim");

-- CreateIndex
CREATE INDEX "car_summary_club_id_differing_chassis_key_claim_idx" ON "car_summary"("club_id", "differing" DESC, "chassis_key", "claim");

-- CreateIndex
CREATE INDEX "club_word_club_id_word_idx" ON "club_word" USING GIN ("club_id" uuid_ops, "word" gin_trgm_ops);

COMMENT ON TYPE "TextSection" IS 'Where on a car''s record a text stands.';
COMMENT ON TABLE "car_text" IS 'Texts of a car, folded, to be looked through; one row a section.';
COMMENT ON COLUMN "car_text"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "car_text"."car_id" IS 'The car. No foreign key: a car that was undone takes its texts along the next time somebody looks.';
COMMENT ON COLUMN "car_text"."section" IS 'Where on the record.';
COMMENT ON COLUMN "car_text"."text" IS 'Its texts, folded, each word after a blank.';
COMMENT ON TABLE "car_summary" IS 'What a car is counted under.';
COMMENT ON COLUMN "car_summary"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "car_summary"."car_id" IS 'The car. No foreign key, as with its texts.';
COMMENT ON COLUMN "car_summary"."chassis_key" IS 'Chassis number in capitals without spaces, dashes and dots, to order by.';
COMMENT ON COLUMN "car_summary"."claim" IS '1, or 2 and up for a further car that claims the same number.';
COMMENT ON COLUMN "car_summary"."series_id" IS 'Series it belongs to; empty while not settled.';
COMMENT ON COLUMN "car_summary"."status" IS 'Its status now.';
COMMENT ON COLUMN "car_summary"."built" IS 'Day it was built at the earliest; the last day of all where it is not known, so that it comes last.';
COMMENT ON COLUMN "car_summary"."decade" IS 'First year of the decade it was certainly built in; empty where that is not known.';
COMMENT ON COLUMN "car_summary"."verdicts" IS 'Verdicts that its values have against factory.';
COMMENT ON COLUMN "car_summary"."modified" IS 'Assemblies on which something was modified.';
COMMENT ON COLUMN "car_summary"."differing" IS 'Characteristics that differ from factory.';
COMMENT ON TABLE "stale_car" IS 'A car whose record changed since its texts and summary were worked out.';
COMMENT ON COLUMN "stale_car"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "stale_car"."id" IS 'Of this note; a car may have several, so that two who change it never wait for each other.';
COMMENT ON COLUMN "stale_car"."car_id" IS 'The car. No foreign key: it may be gone.';
COMMENT ON TABLE "club_word" IS 'A word of a club''s records, names of keepers aside: what a mistyped one is compared with.';
COMMENT ON COLUMN "club_word"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "club_word"."word" IS 'The word, folded.';

ALTER TABLE "car_text" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "car_text" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "car_summary" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "car_summary" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "stale_car" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "stale_car" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "club_word" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "club_word" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- LIKE and the operators of pg_trgm are not leakproof, so under row-level security no index may serve them: a search would
-- read every text of the club. These functions are the one way round: they run as the owner of the tables, name the club of
-- the transaction themselves in every scan, and give nothing but cars' ids and words of that club. Without a club, nothing.

-- Words of the club that a mistyped one is like, likeliest first; `wanted` is letters alone.
CREATE FUNCTION near_words(wanted text, keepers boolean) RETURNS TABLE (word text)
LANGUAGE plpgsql STABLE SECURITY DEFINER PARALLEL SAFE SET search_path = public, pg_temp SET enable_seqscan = off SET plan_cache_mode = force_custom_plan AS $$
#variable_conflict use_column
DECLARE
  club uuid := NULLIF(current_setting('trunnion.club', true), '')::uuid;
  swapped text[];
BEGIN
  IF club IS NULL OR wanted !~ '^[[:alpha:]]{2,}$' THEN RETURN; END IF;
  -- Two letters that changed places share few groups of three, so those words are asked for by themselves.
  SELECT array_agg(left(wanted, i - 1) || substr(wanted, i + 1, 1) || substr(wanted, i, 1) || substr(wanted, i + 2))
    INTO swapped FROM generate_series(1, length(wanted) - 1) AS i;
  RETURN QUERY
    SELECT likely.word FROM (
      SELECT w.word FROM club_word w WHERE w.club_id = club AND (w.word % wanted OR w.word = ANY(swapped))
      UNION
      SELECT part.word FROM car_text t, regexp_split_to_table(t.text, ' ') AS part(word)
      WHERE keepers AND t.club_id = club AND t.section = 'keeper' AND (t.text %> wanted OR t.text ~ array_to_string(swapped, '|')) AND length(part.word) > 3) AS likely
    WHERE similarity(likely.word, wanted) >= 0.35 OR likely.word = ANY(swapped)
    ORDER BY likely.word = ANY(swapped) DESC, similarity(likely.word, wanted) DESC, likely.word LIMIT 3;
END $$;
COMMENT ON FUNCTION near_words(text, boolean) IS 'Words of the transaction''s club like a mistyped one; keepers'' names too where asked for.';

-- Cars that have a text to the letter; `pattern` and `number_pattern` are for LIKE, the latter over numbers alone.
CREATE FUNCTION cars_with(pattern text, number_pattern text, keepers boolean) RETURNS SETOF uuid
LANGUAGE plpgsql STABLE SECURITY DEFINER PARALLEL SAFE ROWS 500 SET search_path = public, pg_temp SET enable_seqscan = off SET plan_cache_mode = force_custom_plan AS $$
DECLARE
  club uuid := NULLIF(current_setting('trunnion.club', true), '')::uuid;
BEGIN
  IF club IS NULL THEN RETURN; END IF;
  IF number_pattern IS NULL THEN
    RETURN QUERY SELECT DISTINCT t.car_id FROM car_text t
      WHERE t.club_id = club AND t.text LIKE pattern AND (keepers OR t.section <> 'keeper');
  ELSE
    RETURN QUERY SELECT DISTINCT t.car_id FROM car_text t
      WHERE t.club_id = club AND (t.text LIKE pattern OR (t.text LIKE number_pattern AND t.section = 'number'))
      AND (keepers OR t.section <> 'keeper');
  END IF;
END $$;
COMMENT ON FUNCTION cars_with(text, text, boolean) IS 'Ids of the transaction''s club''s cars whose texts are like a pattern; keepers'' names too where asked for.';

-- The same, and where no car has it to the letter, those that have a word like it.
CREATE FUNCTION cars_like(wanted text, pattern text, number_pattern text, keepers boolean) RETURNS SETOF uuid
LANGUAGE plpgsql STABLE PARALLEL SAFE ROWS 500 AS $$
BEGIN
  RETURN QUERY SELECT cars_with(pattern, number_pattern, keepers);
  IF FOUND OR wanted IS NULL THEN RETURN; END IF;
  RETURN QUERY SELECT DISTINCT f.car FROM near_words(wanted, keepers) n, cars_with('%' || n.word || '%', NULL, keepers) AS f(car);
END $$;
COMMENT ON FUNCTION cars_like(text, text, text, boolean) IS 'cars_with, or where that finds none, by words of the club that are like the one wanted.';

-- Which cars a statement changed: noted down, not worked out, so that reading in and correcting cost next to nothing.
CREATE FUNCTION note_stale_cars() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  CASE TG_ARGV[0]
    WHEN 'car' THEN
      INSERT INTO stale_car (club_id, id, car_id) SELECT club_id, gen_random_uuid(), id FROM changed;
    WHEN 'of car' THEN
      INSERT INTO stale_car (club_id, id, car_id) SELECT club_id, gen_random_uuid(), car_id
        FROM (SELECT DISTINCT club_id, car_id FROM changed WHERE car_id IS NOT NULL) AS c;
    WHEN 'keeper' THEN
      -- A name that is erased must be gone at once.
      DELETE FROM car_text t USING keepership k, changed c
        WHERE k.club_id = c.club_id AND k.keeper_id = c.id AND t.club_id = k.club_id AND t.car_id = k.car_id AND t.section = 'keeper';
      INSERT INTO stale_car (club_id, id, car_id) SELECT club_id, gen_random_uuid(), car_id
        FROM (SELECT DISTINCT k.club_id, k.car_id FROM keepership k JOIN changed c ON c.club_id = k.club_id AND c.id = k.keeper_id) AS c;
    WHEN 'evidence' THEN
      INSERT INTO stale_car (club_id, id, car_id) SELECT club_id, gen_random_uuid(), car_id
        FROM (SELECT DISTINCT l.club_id, l.car_id FROM evidence_link l JOIN changed c ON c.club_id = l.club_id AND c.id = l.evidence_id
              WHERE l.car_id IS NOT NULL) AS c;
  END CASE;
  RETURN NULL;
END $$;
COMMENT ON FUNCTION note_stale_cars() IS 'Notes down the cars whose records a statement changed.';

DO $$
DECLARE
  noted record;
BEGIN
  FOR noted IN SELECT * FROM (VALUES ('car', 'car'), ('car_identity', 'of car'), ('car_status_span', 'of car'),
    ('history_note', 'of car'), ('modification', 'of car'), ('current_value', 'of car'), ('keepership', 'of car'),
    ('evidence_link', 'of car'), ('keeper', 'keeper'), ('evidence', 'evidence')) AS v (name, kind)
  LOOP
    EXECUTE format('CREATE TRIGGER stale_after_insert AFTER INSERT ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_stale_cars(%L)', noted.name, noted.kind);
    EXECUTE format('CREATE TRIGGER stale_after_update AFTER UPDATE ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_stale_cars(%L)', noted.name, noted.kind);
    EXECUTE format('CREATE TRIGGER stale_after_delete AFTER DELETE ON %I REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_stale_cars(%L)', noted.name, noted.kind);
  END LOOP;
END $$;

INSERT INTO stale_car (club_id, id, car_id) SELECT club_id, gen_random_uuid(), id FROM car;
