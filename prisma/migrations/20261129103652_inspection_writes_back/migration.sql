-- AlterTable
ALTER TABLE "event" ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

-- AlterTable
ALTER TABLE "entry" ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

-- AlterTable
ALTER TABLE "finding_reading" ADD COLUMN     "instrument_id" UUID;

-- AlterTable
ALTER TABLE "dated_item" ADD COLUMN     "entry_id" UUID;

-- AlterTable
ALTER TABLE "setting_sheet" ADD COLUMN     "entry_id" UUID;

-- CreateTable
CREATE TABLE "inspection_device" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "event_id" UUID NOT NULL,
    "person_id" UUID,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "heard_at" TIMESTAMPTZ(3) NOT NULL,
    "made" INTEGER NOT NULL,
    "held" INTEGER NOT NULL,
    "clock_off" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "inspection_device_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE INDEX "inspection_device_club_id_event_id_idx" ON "inspection_device"("club_id", "event_id");

-- CreateIndex
CREATE INDEX "setting_sheet_club_id_entry_id_idx" ON "setting_sheet"("club_id", "entry_id");

-- AddForeignKey
ALTER TABLE "finding_reading" ADD CONSTRAINT "finding_reading_club_id_instrument_id_fkey" FOREIGN KEY ("club_id", "instrument_id") REFERENCES "instrument"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection_device" ADD CONSTRAINT "inspection_device_club_id_event_id_fkey" FOREIGN KEY ("club_id", "event_id") REFERENCES "event"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "dated_item" ADD CONSTRAINT "dated_item_club_id_entry_id_fkey" FOREIGN KEY ("club_id", "entry_id") REFERENCES "entry"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "setting_sheet" ADD CONSTRAINT "setting_sheet_club_id_entry_id_fkey" FOREIGN KEY ("club_id", "entry_id") REFERENCES "entry"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON COLUMN "current_value"."origin" IS 'As built, modification or reading; what only the specification says is not kept here.';
COMMENT ON COLUMN "event"."version" IS 'Counts up with every change of the event''s facts; guards against two editors.';
COMMENT ON COLUMN "entry"."version" IS 'Counts up with every change by form; guards against two editors.';
COMMENT ON COLUMN "finding_reading"."instrument_id" IS 'What it was read with; empty where nobody said.';
COMMENT ON TABLE "inspection_device" IS 'A phone or tablet that took an event along, and what it said of itself when it was last heard of.';
COMMENT ON COLUMN "inspection_device"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "inspection_device"."id" IS 'UUID the device made for itself at this event.';
COMMENT ON COLUMN "inspection_device"."event_id" IS 'The event it took along.';
COMMENT ON COLUMN "inspection_device"."person_id" IS 'Person signed in on it when it was last heard of.';
COMMENT ON COLUMN "inspection_device"."taken_at" IS 'When it was first heard of, by the server''s clock.';
COMMENT ON COLUMN "inspection_device"."heard_at" IS 'When it was last heard of, by the server''s clock.';
COMMENT ON COLUMN "inspection_device"."made" IS 'Findings and decisions it had made in all, by its own count.';
COMMENT ON COLUMN "inspection_device"."held" IS 'Findings, decisions and photos it still held and had not sent, by its own count.';
COMMENT ON COLUMN "inspection_device"."clock_off" IS 'How far its clock was ahead of the server''s, seconds.';
COMMENT ON COLUMN "dated_item"."entry_id" IS 'Entry of an event whose findings told it; empty where it was entered otherwise.';
COMMENT ON COLUMN "setting_sheet"."entry_id" IS 'Entry of an event whose findings it was made of; empty for any other.';

ALTER TABLE "inspection_device" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "inspection_device" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

ALTER TABLE "inspection_device" ADD CONSTRAINT "inspection_device_counts" CHECK (made >= 0 AND held >= 0);
-- An entry's readings stand on one sheet of the car; those before it are superseded.
CREATE UNIQUE INDEX "setting_sheet_one_standing_an_entry" ON "setting_sheet"("club_id", "entry_id") WHERE superseded_at IS NULL AND entry_id IS NOT NULL;
