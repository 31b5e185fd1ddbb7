-- AlterEnum
ALTER TYPE "SubmissionStatus" ADD VALUE 'answered' AFTER 'queried';

-- AlterTable
ALTER TABLE "evidence_link" ADD COLUMN     "submission_id" UUID;

-- AlterTable
ALTER TABLE "submission" ADD COLUMN     "content" JSONB NOT NULL DEFAULT '{}',
ADD COLUMN     "editor_count" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "editor_key" UUID,
ADD COLUMN     "saved_at" TIMESTAMPTZ(3),
ADD COLUMN     "step_key" UUID;

-- CreateTable
CREATE TABLE "notice" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "submission_id" UUID NOT NULL,
    "subject" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "not_before" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sent_at" TIMESTAMPTZ(3),
    "sent_by" TEXT,
    "given_up_at" TIMESTAMPTZ(3),
    "problem" TEXT,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "notice_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE INDEX "notice_club_id_submission_id_idx" ON "notice"("club_id", "submission_id");

-- CreateIndex
CREATE INDEX "notice_club_id_person_id_idx" ON "notice"("club_id", "person_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_submission_id_idx" ON "evidence_link"("club_id", "submission_id");

-- CreateIndex
CREATE INDEX "submission_club_id_made_by_id_idx" ON "submission"("club_id", "made_by_id");

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_submission_id_fkey" FOREIGN KEY ("club_id", "submission_id") REFERENCES "submission"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice" ADD CONSTRAINT "notice_club_id_submission_id_fkey" FOREIGN KEY ("club_id", "submission_id") REFERENCES "submission"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON COLUMN "evidence_link"."submission_id" IS 'A submission that is not accepted yet; then what it becomes.';
COMMENT ON COLUMN "submission"."content" IS 'What it says, as typed: modifications and setting sheets, until they are accepted and become rows of their own.';
COMMENT ON COLUMN "submission"."editor_key" IS 'Key of the open form that saved the draft last, so that a form never meets itself as somebody else.';
COMMENT ON COLUMN "submission"."editor_count" IS 'Number of that form''s last save: an earlier one that comes late is passed over.';
COMMENT ON COLUMN "submission"."step_key" IS 'Key of the last step, made by whoever took it, so that a step sent twice is one step.';
COMMENT ON COLUMN "submission"."saved_at" IS 'When the draft was last saved.';
COMMENT ON TABLE "notice" IS 'What somebody is told about a submission, in the app and by e-mail.';
COMMENT ON COLUMN "notice"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "notice"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "notice"."person_id" IS 'Who is told.';
COMMENT ON COLUMN "notice"."submission_id" IS 'What it is about.';
COMMENT ON COLUMN "notice"."subject" IS 'Subject of the e-mail.';
COMMENT ON COLUMN "notice"."text" IS 'The e-mail as plain text, without address and greeting.';
COMMENT ON COLUMN "notice"."tries" IS 'Tries to send it so far.';
COMMENT ON COLUMN "notice"."not_before" IS 'Not tried again before.';
COMMENT ON COLUMN "notice"."sent_at" IS 'When it was sent; empty while it waits.';
COMMENT ON COLUMN "notice"."sent_by" IS 'How it was sent: by e-mail, or into the outbox folder.';
COMMENT ON COLUMN "notice"."given_up_at" IS 'When sending was given up; empty while it waits.';
COMMENT ON COLUMN "notice"."problem" IS 'Why the last try failed.';
COMMENT ON COLUMN "notice"."recorded_at" IS 'When the row was recorded.';

ALTER TABLE "notice" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "notice" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- Evidence supports exactly one thing by one link; what is handed in with a submission is one of them.
ALTER TABLE "evidence_link" DROP CONSTRAINT "evidence_link_one_target";
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_one_target"
  CHECK (num_nonnulls(car_id, as_built_value_id, modification_id, setting_sheet_id, finding_id, car_identity_id,
    car_status_span_id, history_note_id, specification_entry_id, number_decision_id, submission_id) = 1);

-- What waits to be sent is asked for every few seconds, and is next to nothing of the table.
CREATE INDEX "notice_waiting_idx" ON "notice" (club_id, not_before) WHERE sent_at IS NULL AND given_up_at IS NULL;
ALTER TABLE "notice" ADD CONSTRAINT "notice_sent_or_given_up" CHECK (sent_at IS NULL OR given_up_at IS NULL);
