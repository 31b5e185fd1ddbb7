-- AlterTable
ALTER TABLE "current_value" ADD COLUMN     "since_text" TEXT;

-- CreateIndex
CREATE INDEX "journal_entry_club_id_at_sequence_idx" ON "journal_entry"("club_id", "at", "sequence");

-- CreateIndex
CREATE INDEX "journal_entry_club_id_person_id_at_sequence_idx" ON "journal_entry"("club_id", "person_id", "at", "sequence");

-- CreateIndex
CREATE INDEX "journal_entry_club_id_action_at_sequence_idx" ON "journal_entry"("club_id", "action", "at", "sequence");

COMMENT ON COLUMN "current_value"."since" IS 'Since when the record says so: the latest day that its date allows.';
COMMENT ON COLUMN "current_value"."since_text" IS 'Since when, as far as the record knows ("1998", "by 25 Nov 2026"): what is shown; empty where there is no such day.';

-- What stands now gets the words of its own record: a modification of "1998" is not one of 31 December.
UPDATE current_value v SET since_text = CASE
    WHEN m.fitted_latest IS NULL THEN 'by ' || to_char(v.since, 'FMDD Mon YYYY')
    WHEN m.fitted_earliest = m.fitted_latest THEN to_char(v.since, 'FMDD Mon YYYY')
    ELSE m.fitted_text END
  FROM modification m
  WHERE v.origin = 'modification' AND m.club_id = v.club_id AND m.id = v.origin_id AND v.since IS NOT NULL;
UPDATE current_value SET since_text = to_char(since, 'FMDD Mon YYYY')
  WHERE origin = 'reading' AND since IS NOT NULL;
