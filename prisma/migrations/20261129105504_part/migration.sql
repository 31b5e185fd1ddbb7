-- CreateEnum
CREATE TYPE "PartKind" AS ENUM ('works', 'donor', 'substitute');

-- CreateEnum
CREATE TYPE "PartFitStanding" AS ENUM ('original', 'fits', 'altered', 'doesNotFit');

-- CreateEnum
CREATE TYPE "PartFeatureKind" AS ENUM ('characteristic', 'thread', 'length', 'diameter', 'offset', 'stop', 'other');

-- CreateEnum
CREATE TYPE "PartNoteKind" AS ENUM ('found', 'notFound', 'confirmed', 'doubted');

-- CreateTable
CREATE TABLE "part" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "assembly" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "place_key" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" "PartKind" NOT NULL,
    "origin" TEXT,
    "part_number" TEXT,
    "note" TEXT,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "version" INTEGER NOT NULL DEFAULT 1,
    "made_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawn_at" TIMESTAMPTZ(3),
    "withdrawn_reason" TEXT,

    CONSTRAINT "part_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "part_fit" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "series_id" UUID NOT NULL,
    "standing" "PartFitStanding" NOT NULL,
    "serial_from" INTEGER,
    "serial_to" INTEGER,
    "note" TEXT,

    CONSTRAINT "part_fit_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "part_feature" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "kind" "PartFeatureKind" NOT NULL,
    "characteristic" TEXT,
    "spot" TEXT,
    "tells" BOOLEAN NOT NULL DEFAULT false,
    "value_kind" "ValueKind" NOT NULL,
    "entered" TEXT NOT NULL,
    "number" DOUBLE PRECISION,
    "resolution" DOUBLE PRECISION,
    "text" TEXT,

    CONSTRAINT "part_feature_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "part_note" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "on" DATE NOT NULL,
    "kind" "PartNoteKind" NOT NULL,
    "count" INTEGER,
    "text" TEXT,
    "car_id" UUID,
    "made_by_id" UUID,
    "client_key" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "part_note_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE INDEX "part_club_id_assembly_place_key_idx" ON "part"("club_id", "assembly", "place_key");

-- CreateIndex
CREATE UNIQUE INDEX "part_club_id_slug_key" ON "part"("club_id", "slug");

-- CreateIndex
CREATE INDEX "part_fit_club_id_part_id_idx" ON "part_fit"("club_id", "part_id");

-- CreateIndex
CREATE INDEX "part_fit_club_id_series_id_idx" ON "part_fit"("club_id", "series_id");

-- CreateIndex
CREATE INDEX "part_feature_club_id_characteristic_idx" ON "part_feature"("club_id", "characteristic");

-- CreateIndex
CREATE UNIQUE INDEX "part_feature_club_id_part_id_ordinal_key" ON "part_feature"("club_id", "part_id", "ordinal");

-- CreateIndex
CREATE INDEX "part_note_club_id_part_id_on_idx" ON "part_note"("club_id", "part_id", "on");

-- CreateIndex
CREATE INDEX "part_note_club_id_car_id_idx" ON "part_note"("club_id", "car_id");

-- CreateIndex
CREATE UNIQUE INDEX "part_note_club_id_client_key_key" ON "part_note"("club_id", "client_key");

-- AddForeignKey
ALTER TABLE "part" ADD CONSTRAINT "part_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_fit" ADD CONSTRAINT "part_fit_club_id_part_id_fkey" FOREIGN KEY ("club_id", "part_id") REFERENCES "part"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_fit" ADD CONSTRAINT "part_fit_club_id_series_id_fkey" FOREIGN KEY ("club_id", "series_id") REFERENCES "series"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_feature" ADD CONSTRAINT "part_feature_club_id_part_id_fkey" FOREIGN KEY ("club_id", "part_id") REFERENCES "part"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_note" ADD CONSTRAINT "part_note_club_id_part_id_fkey" FOREIGN KEY ("club_id", "part_id") REFERENCES "part"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_note" ADD CONSTRAINT "part_note_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON TYPE "PartKind" IS 'Where a part comes from.';
COMMENT ON TABLE "part" IS 'One part that fits, or might be thought to fit, the club''s cars.';
COMMENT ON COLUMN "part"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "part"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "part"."slug" IS 'Short name in addresses.';
COMMENT ON COLUMN "part"."assembly" IS 'Assembly it belongs to.';
COMMENT ON COLUMN "part"."place" IS 'Where it sits on the car ("front caliper"); parts of one place stand in for one another.';
COMMENT ON COLUMN "part"."place_key" IS 'The place folded, for finding its like.';
COMMENT ON COLUMN "part"."name" IS 'What it is.';
COMMENT ON COLUMN "part"."kind" IS 'Where it comes from.';
COMMENT ON COLUMN "part"."origin" IS 'Donor car, its years, or maker, as people say it; no personal data.';
COMMENT ON COLUMN "part"."part_number" IS 'Number it is ordered or marked by.';
COMMENT ON COLUMN "part"."note" IS 'Free note; no personal data.';
COMMENT ON COLUMN "part"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "part"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "part"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "part"."version" IS 'Counts up with every change; guards against two editors.';
COMMENT ON COLUMN "part"."made_by_id" IS 'Person who added it; empty for an import.';
COMMENT ON COLUMN "part"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "part"."withdrawn_at" IS 'When it was taken off the list; empty while it stands.';
COMMENT ON COLUMN "part"."withdrawn_reason" IS 'Why it was taken off the list.';
COMMENT ON TYPE "PartFitStanding" IS 'How a part goes with a series.';
COMMENT ON TABLE "part_fit" IS 'Whether a part fits a series, or some of its cars.';
COMMENT ON COLUMN "part_fit"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "part_fit"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "part_fit"."part_id" IS 'The part.';
COMMENT ON COLUMN "part_fit"."series_id" IS 'The series.';
COMMENT ON COLUMN "part_fit"."standing" IS 'How it goes with it.';
COMMENT ON COLUMN "part_fit"."serial_from" IS 'First serial it holds for; empty for the first of the series.';
COMMENT ON COLUMN "part_fit"."serial_to" IS 'Last serial it holds for; empty for the last of the series.';
COMMENT ON COLUMN "part_fit"."note" IS 'What has to be altered, or why it does not fit.';
COMMENT ON TYPE "PartFeatureKind" IS 'What kind of thing a feature of a part is.';
COMMENT ON TABLE "part_feature" IS 'Something about a part that decides whether it goes with another.';
COMMENT ON COLUMN "part_feature"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "part_feature"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "part_feature"."part_id" IS 'The part.';
COMMENT ON COLUMN "part_feature"."ordinal" IS 'Order within the part, from 1.';
COMMENT ON COLUMN "part_feature"."kind" IS 'Thread, length, offset, stop, or a characteristic of the dictionary.';
COMMENT ON COLUMN "part_feature"."characteristic" IS 'Characteristic''s key, for one of the dictionary; else empty.';
COMMENT ON COLUMN "part_feature"."spot" IS 'Where on the part, as its neighbour is named too ("bolt to upright"); empty for one of the dictionary.';
COMMENT ON COLUMN "part_feature"."tells" IS 'A car whose record has this value has the part, as far as this tells.';
COMMENT ON COLUMN "part_feature"."value_kind" IS 'Value: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "part_feature"."entered" IS 'Value: what was entered, to the letter.';
COMMENT ON COLUMN "part_feature"."number" IS 'Value: SI number of a quantity.';
COMMENT ON COLUMN "part_feature"."resolution" IS 'Value: resolution the entry implies, SI.';
COMMENT ON COLUMN "part_feature"."text" IS 'Value: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON TYPE "PartNoteKind" IS 'What a member noted about a part on a day.';
COMMENT ON TABLE "part_note" IS 'A dated note about a part: found, looked for in vain, fit confirmed or doubted.';
COMMENT ON COLUMN "part_note"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "part_note"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "part_note"."part_id" IS 'The part.';
COMMENT ON COLUMN "part_note"."on" IS 'Day it was so.';
COMMENT ON COLUMN "part_note"."kind" IS 'Found, looked for in vain, confirmed or doubted.';
COMMENT ON COLUMN "part_note"."count" IS 'How many were there, where it was found.';
COMMENT ON COLUMN "part_note"."text" IS 'What was seen, where, at what price. Personal data where it names somebody.';
COMMENT ON COLUMN "part_note"."car_id" IS 'Car it was tried on.';
COMMENT ON COLUMN "part_note"."made_by_id" IS 'Person who noted it; empty for an import.';
COMMENT ON COLUMN "part_note"."client_key" IS 'Key the form made, so that sending twice is one note.';
COMMENT ON COLUMN "part_note"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "part_note"."withdrawn_at" IS 'When it was taken back; empty while it stands.';

ALTER TABLE "part" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "part" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "part_fit" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "part_fit" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "part_feature" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "part_feature" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "part_note" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "part_note" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- A feature is one of the dictionary's or has a spot of its own; only the dictionary's can be seen on a car's record.
ALTER TABLE "part_feature" ADD CONSTRAINT "part_feature_kind" CHECK ((kind = 'characteristic') = (characteristic IS NOT NULL) AND (characteristic IS NULL) = (spot IS NOT NULL) AND (NOT tells OR kind = 'characteristic'));
ALTER TABLE "part_fit" ADD CONSTRAINT "part_fit_span" CHECK (serial_from <= serial_to);
ALTER TABLE "part_note" ADD CONSTRAINT "part_note_count" CHECK (count IS NULL OR (count > 0 AND kind = 'found'));
ALTER TABLE "part" ADD CONSTRAINT "part_withdrawn_with_reason" CHECK ((withdrawn_at IS NULL) = (withdrawn_reason IS NULL));
