-- CreateEnum
CREATE TYPE "NumberOutcome" AS ENUM ('oneHolds', 'allStand', 'sameCar', 'undecided');

-- CreateEnum
CREATE TYPE "ImportStatus" AS ENUM ('planned', 'running', 'interrupted', 'done', 'failed', 'undone');

-- AlterTable
ALTER TABLE "current_value" ADD COLUMN     "nominal_number" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "evidence" ADD COLUMN     "height" INTEGER,
ADD COLUMN     "keeps_location" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "width" INTEGER,
ADD COLUMN     "withdrawn_at" TIMESTAMPTZ(3),
ADD COLUMN     "withdrawn_reason" TEXT;

-- AlterTable
ALTER TABLE "evidence_link" ADD COLUMN     "car_identity_id" UUID,
ADD COLUMN     "car_status_span_id" UUID,
ADD COLUMN     "history_note_id" UUID,
ADD COLUMN     "locus" TEXT,
ADD COLUMN     "number_decision_id" UUID,
ADD COLUMN     "specification_entry_id" UUID;

-- AlterTable
ALTER TABLE "import_run" ADD COLUMN     "beat_at" TIMESTAMPTZ(3),
ADD COLUMN     "doubts" JSONB,
ADD COLUMN     "ended_at" TIMESTAMPTZ(3),
ADD COLUMN     "failure" TEXT,
ADD COLUMN     "options" JSONB,
ADD COLUMN     "problems" JSONB,
ADD COLUMN     "rows_done" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "started_at" TIMESTAMPTZ(3),
ADD COLUMN     "status" "ImportStatus" NOT NULL DEFAULT 'done';

-- AlterTable
ALTER TABLE "specification" ADD COLUMN     "copied_from_id" UUID,
ADD COLUMN     "made_current_at" TIMESTAMPTZ(3),
ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "superseded_at" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "number_decision" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "kind" "IdentityKind" NOT NULL,
    "number_key" TEXT NOT NULL,
    "outcome" "NumberOutcome" NOT NULL,
    "holder_id" UUID,
    "reason" TEXT NOT NULL,
    "decided_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "superseded_at" TIMESTAMPTZ(3),

    CONSTRAINT "number_decision_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "public_extract" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "open" BOOLEAN NOT NULL DEFAULT false,
    "parts" TEXT[],
    "characteristics" TEXT[],
    "series" TEXT[],
    "lead" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "public_extract_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "import_step" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "run_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "car_id" UUID NOT NULL,
    "table" TEXT NOT NULL,
    "row_id" TEXT NOT NULL,
    "before" JSONB,

    CONSTRAINT "import_step_pkey" PRIMARY KEY ("club_id","run_id","ordinal")
);

-- CreateTable
CREATE TABLE "import_mapping" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "heading_key" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "mapping" JSONB NOT NULL,
    "made_by_id" UUID,
    "used_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "import_mapping_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE INDEX "number_decision_club_id_kind_number_key_idx" ON "number_decision"("club_id", "kind", "number_key");

-- CreateIndex
CREATE INDEX "number_decision_club_id_holder_id_idx" ON "number_decision"("club_id", "holder_id");

-- CreateIndex
CREATE UNIQUE INDEX "public_extract_club_id_key" ON "public_extract"("club_id");

-- CreateIndex
CREATE INDEX "import_step_club_id_car_id_idx" ON "import_step"("club_id", "car_id");

-- CreateIndex
CREATE UNIQUE INDEX "import_mapping_club_id_heading_key_key" ON "import_mapping"("club_id", "heading_key");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_as_built_value_id_idx" ON "evidence_link"("club_id", "as_built_value_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_modification_id_idx" ON "evidence_link"("club_id", "modification_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_setting_sheet_id_idx" ON "evidence_link"("club_id", "setting_sheet_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_finding_id_idx" ON "evidence_link"("club_id", "finding_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_car_identity_id_idx" ON "evidence_link"("club_id", "car_identity_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_car_status_span_id_idx" ON "evidence_link"("club_id", "car_status_span_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_history_note_id_idx" ON "evidence_link"("club_id", "history_note_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_specification_entry_id_idx" ON "evidence_link"("club_id", "specification_entry_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_number_decision_id_idx" ON "evidence_link"("club_id", "number_decision_id");

-- AddForeignKey
ALTER TABLE "number_decision" ADD CONSTRAINT "number_decision_club_id_holder_id_fkey" FOREIGN KEY ("club_id", "holder_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_car_identity_id_fkey" FOREIGN KEY ("club_id", "car_identity_id") REFERENCES "car_identity"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_car_status_span_id_fkey" FOREIGN KEY ("club_id", "car_status_span_id") REFERENCES "car_status_span"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_history_note_id_fkey" FOREIGN KEY ("club_id", "history_note_id") REFERENCES "history_note"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_specification_entry_id_fkey" FOREIGN KEY ("club_id", "specification_entry_id") REFERENCES "specification_entry"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_number_decision_id_fkey" FOREIGN KEY ("club_id", "number_decision_id") REFERENCES "number_decision"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import_step" ADD CONSTRAINT "import_step_club_id_run_id_fkey" FOREIGN KEY ("club_id", "run_id") REFERENCES "import_run"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "specification" ADD CONSTRAINT "specification_club_id_copied_from_id_fkey" FOREIGN KEY ("club_id", "copied_from_id") REFERENCES "specification"("club_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

COMMENT ON COLUMN "current_value"."nominal_number" IS 'SI number of the nominal it was compared with; empty where there is none or it is no quantity.';
COMMENT ON TYPE "NumberOutcome" IS 'What a registrar decided about a number that several cars claim.';
COMMENT ON TABLE "number_decision" IS 'A reasoned decision about a number that several cars claim; the latest that is not superseded counts.';
COMMENT ON COLUMN "number_decision"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "number_decision"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "number_decision"."kind" IS 'Kind of number.';
COMMENT ON COLUMN "number_decision"."number_key" IS 'The number without blanks, dashes and case.';
COMMENT ON COLUMN "number_decision"."outcome" IS 'What was decided.';
COMMENT ON COLUMN "number_decision"."holder_id" IS 'The car that holds it, where one does.';
COMMENT ON COLUMN "number_decision"."reason" IS 'The reasons, in the registrar''s words.';
COMMENT ON COLUMN "number_decision"."decided_by_id" IS 'Person who decided; empty for the command line.';
COMMENT ON COLUMN "number_decision"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "number_decision"."superseded_at" IS 'When a later decision took its place; empty while it stands.';
COMMENT ON TABLE "public_extract" IS 'What a club shows to everybody, without personal data. No row: nothing.';
COMMENT ON COLUMN "public_extract"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "public_extract"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "public_extract"."open" IS 'Shown at all.';
COMMENT ON COLUMN "public_extract"."parts" IS 'What is shown of a car: parts of the record by name.';
COMMENT ON COLUMN "public_extract"."characteristics" IS 'Characteristics shown of a car, by key.';
COMMENT ON COLUMN "public_extract"."series" IS 'Series shown, by short name; none named: all.';
COMMENT ON COLUMN "public_extract"."lead" IS 'A sentence or two at the head of the extract.';
COMMENT ON COLUMN "public_extract"."version" IS 'Counts up with every change; guards against two editors.';
COMMENT ON COLUMN "public_extract"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "evidence"."width" IS 'Width of a picture as it is stored, pixels; empty for a document.';
COMMENT ON COLUMN "evidence"."height" IS 'Height of a picture as it is stored, pixels; empty for a document.';
COMMENT ON COLUMN "evidence"."keeps_location" IS 'The place where it was taken was left in the file, because whoever added it asked for that.';
COMMENT ON COLUMN "evidence"."withdrawn_at" IS 'When it was withdrawn: no longer shown, kept with the journal; empty while it stands.';
COMMENT ON COLUMN "evidence"."withdrawn_reason" IS 'Why it was withdrawn.';
COMMENT ON COLUMN "evidence_link"."car_identity_id" IS 'A number or mark of a car.';
COMMENT ON COLUMN "evidence_link"."car_status_span_id" IS 'A status of a car.';
COMMENT ON COLUMN "evidence_link"."history_note_id" IS 'A note in a car''s history.';
COMMENT ON COLUMN "evidence_link"."specification_entry_id" IS 'An entry of a specification.';
COMMENT ON COLUMN "evidence_link"."number_decision_id" IS 'A decision about a number that several cars claim.';
COMMENT ON COLUMN "evidence_link"."locus" IS 'Page, frame or corner of the evidence that shows it.';
COMMENT ON TYPE "ImportStatus" IS 'How far a reading-in is.';
COMMENT ON COLUMN "import_run"."status" IS 'How far it is.';
COMMENT ON COLUMN "import_run"."options" IS 'How it is read: encoding, sheet, column for each heading, units, day it tells of.';
COMMENT ON COLUMN "import_run"."rows_done" IS 'Rows of the file worked through so far.';
COMMENT ON COLUMN "import_run"."problems" IS 'What was wrong, row by row: line, column, found, expected.';
COMMENT ON COLUMN "import_run"."doubts" IS 'What to look at, although it was taken.';
COMMENT ON COLUMN "import_run"."failure" IS 'Why it failed, in words.';
COMMENT ON COLUMN "import_run"."started_at" IS 'When the work began.';
COMMENT ON COLUMN "import_run"."beat_at" IS 'When it last wrote something: one that stands still was interrupted.';
COMMENT ON COLUMN "import_run"."ended_at" IS 'When it was done.';
COMMENT ON TABLE "import_step" IS 'One row that a reading-in wrote, so that it can be taken back. May hold personal data: erased with the keeper.';
COMMENT ON COLUMN "import_step"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "import_step"."run_id" IS 'The reading-in.';
COMMENT ON COLUMN "import_step"."ordinal" IS 'Order of writing, from 1.';
COMMENT ON COLUMN "import_step"."car_id" IS 'Car concerned.';
COMMENT ON COLUMN "import_step"."table" IS 'Table written to.';
COMMENT ON COLUMN "import_step"."row_id" IS 'Row written: its id, or what stands for it.';
COMMENT ON COLUMN "import_step"."before" IS 'The row before, to the letter; empty when it was added.';
COMMENT ON TABLE "import_mapping" IS 'What the columns of a kind of file mean, remembered for the next one.';
COMMENT ON COLUMN "import_mapping"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "import_mapping"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "import_mapping"."heading_key" IS 'The headings of the file, folded and joined: how the next one is known.';
COMMENT ON COLUMN "import_mapping"."file_name" IS 'Name of the file it was made for.';
COMMENT ON COLUMN "import_mapping"."mapping" IS 'Column for each heading, with its unit.';
COMMENT ON COLUMN "import_mapping"."made_by_id" IS 'Person who made it; empty for the command line.';
COMMENT ON COLUMN "import_mapping"."used_at" IS 'When it was last used.';
COMMENT ON COLUMN "import_mapping"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "specification"."copied_from_id" IS 'Version or series'' specification it was copied from; empty when written anew.';
COMMENT ON COLUMN "specification"."revision" IS 'Counts up with every change of a draft; guards against two editors.';
COMMENT ON COLUMN "specification"."made_current_at" IS 'When it became the current one; empty for a draft.';
COMMENT ON COLUMN "specification"."superseded_at" IS 'When a later version took its place; empty while it is current or a draft.';

ALTER TABLE "number_decision" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "number_decision" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "public_extract" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "public_extract" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "import_step" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "import_step" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "import_mapping" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "import_mapping" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- Evidence supports exactly one thing by one link, of more kinds now.
ALTER TABLE "evidence_link" DROP CONSTRAINT "evidence_link_one_target";
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_one_target"
  CHECK (num_nonnulls(car_id, as_built_value_id, modification_id, setting_sheet_id, finding_id, car_identity_id,
    car_status_span_id, history_note_id, specification_entry_id, number_decision_id) = 1);

-- One decision stands for a number; a holder is named exactly where one car holds it.
CREATE UNIQUE INDEX "number_decision_standing_key" ON "number_decision" (club_id, kind, number_key)
  WHERE superseded_at IS NULL;
ALTER TABLE "number_decision" ADD CONSTRAINT "number_decision_holder"
  CHECK ((outcome = 'oneHolds') = (holder_id IS NOT NULL));

-- Specifications of before this step: when each became current and was superseded is when it, and the next, were recorded.
UPDATE "specification" s SET
  made_current_at = CASE WHEN status <> 'draft' THEN recorded_at END,
  superseded_at = CASE WHEN status = 'superseded' THEN coalesce(
    (SELECT min(recorded_at) FROM "specification" n
      WHERE n.club_id = s.club_id AND n.series_id = s.series_id AND n.version > s.version), recorded_at) END;
