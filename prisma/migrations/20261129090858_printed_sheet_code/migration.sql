-- AlterTable
ALTER TABLE "printed_sheet" ADD COLUMN     "code" TEXT;

-- CreateIndex
CREATE UNIQUE INDEX "printed_sheet_code_key" ON "printed_sheet"("code");

COMMENT ON COLUMN "printed_sheet"."code" IS 'Short code printed on it, by which anybody holding it asks whether the record has moved on; empty for one printed before there were codes.';

-- A code is eight of 32 letters and digits that cannot be taken for another.
ALTER TABLE "printed_sheet" ADD CONSTRAINT "printed_sheet_code_shape" CHECK (code ~ '^[0-9A-HJKMNP-TV-Z]{8}$');

-- Whoever holds the paper sees the print its code belongs to.
CREATE POLICY "own_sheet" ON "printed_sheet" FOR SELECT
  USING (code = NULLIF(current_setting('trunnion.sheet', true), ''));
