-- AlterTable
ALTER TABLE "evidence_link" ADD COLUMN     "characteristic" TEXT,
ADD COLUMN     "part_id" UUID;

-- CreateIndex
CREATE INDEX "evidence_link_club_id_part_id_idx" ON "evidence_link"("club_id", "part_id");

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_part_id_fkey" FOREIGN KEY ("club_id", "part_id") REFERENCES "part"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON COLUMN "evidence_link"."part_id" IS 'A part of the list.';
COMMENT ON COLUMN "evidence_link"."characteristic" IS 'Key of the one characteristic that it shows of what it supports; empty for all of it.';

-- Evidence supports exactly one thing by one link; a part of the list is one of them.
ALTER TABLE "evidence_link" DROP CONSTRAINT "evidence_link_one_target";
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_one_target"
  CHECK (num_nonnulls(car_id, as_built_value_id, modification_id, setting_sheet_id, finding_id, car_identity_id,
    car_status_span_id, history_note_id, specification_entry_id, number_decision_id, submission_id, part_id) = 1);
