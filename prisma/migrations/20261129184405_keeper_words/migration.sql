-- Names of keepers that a mistyped word is like: among all texts of a club the index gave thousands of long ones, each of
-- which was compared letter by letter before it was seen to be no name. Of 100,000 cars 455 ms a word, three times a page;
-- with an index of names alone under a millisecond.
CREATE INDEX "car_text_keeper_idx" ON "car_text" USING GIN ("club_id" uuid_ops, "text" gin_trgm_ops) WHERE "section" = 'keeper';
