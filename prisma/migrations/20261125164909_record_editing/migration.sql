-- AlterTable
ALTER TABLE "car" ADD COLUMN     "merged_into_id" UUID;

-- CreateTable
CREATE TABLE "number_set_aside" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "finding" TEXT NOT NULL,
    "basis" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "set_aside_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "taken_up_at" TIMESTAMPTZ(3),

    CONSTRAINT "number_set_aside_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE INDEX "number_set_aside_club_id_finding_idx" ON "number_set_aside"("club_id", "finding");

-- CreateIndex
CREATE INDEX "car_club_id_merged_into_id_idx" ON "car"("club_id", "merged_into_id");

-- AddForeignKey
ALTER TABLE "car" ADD CONSTRAINT "car_club_id_merged_into_id_fkey" FOREIGN KEY ("club_id", "merged_into_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON COLUMN "car"."merged_into_id" IS 'The car that this record turned out to be of, which has everything of it now; the record stays as a pointer.';
COMMENT ON TABLE "number_set_aside" IS 'Something odd about the club''s numbers that a registrar looked at and leaves as it is, with the reason.';
COMMENT ON COLUMN "number_set_aside"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "number_set_aside"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "number_set_aside"."finding" IS 'What it is about: kind, and the cars or the number it names.';
COMMENT ON COLUMN "number_set_aside"."basis" IS 'What it rested on then; when that changes, it is shown again.';
COMMENT ON COLUMN "number_set_aside"."reason" IS 'Why it is left as it is.';
COMMENT ON COLUMN "number_set_aside"."set_aside_by_id" IS 'Person who set it aside; empty for the command line.';
COMMENT ON COLUMN "number_set_aside"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "number_set_aside"."taken_up_at" IS 'When it was taken up again; empty while it stands.';

ALTER TABLE "number_set_aside" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "number_set_aside" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- A finding is set aside once.
CREATE UNIQUE INDEX "number_set_aside_standing_key" ON "number_set_aside" (club_id, finding) WHERE taken_up_at IS NULL;
-- A pointer points to another car.
ALTER TABLE "car" ADD CONSTRAINT "car_merged_into_another" CHECK (merged_into_id <> id);
