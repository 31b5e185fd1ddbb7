-- AlterTable
ALTER TABLE "instrument" ADD COLUMN     "calibrated_until" DATE,
ADD COLUMN     "number" TEXT,
ADD COLUMN     "retired_at" TIMESTAMPTZ(3),
ADD COLUMN     "retired_reason" TEXT,
ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

COMMENT ON COLUMN "instrument"."calibrated_until" IS 'Last day its calibration is good for; empty where nobody says.';
COMMENT ON COLUMN "instrument"."number" IS 'Its own number, as stamped on it or on its certificate.';
COMMENT ON COLUMN "instrument"."retired_at" IS 'When it was taken out of use; empty while it is offered.';
COMMENT ON COLUMN "instrument"."retired_reason" IS 'Why it was taken out of use.';
COMMENT ON COLUMN "instrument"."version" IS 'Counts changes, for optimistic locking.';

ALTER TABLE "instrument" ADD CONSTRAINT "instrument_retired_with_reason" CHECK (("retired_at" IS NULL) = ("retired_reason" IS NULL));
ALTER TABLE "instrument" ADD CONSTRAINT "instrument_calibrated_in_order" CHECK ("calibrated_until" >= "calibrated_on");

-- What was read with an instrument; most readings name none.
CREATE INDEX "reading_instrument" ON "reading" ("club_id", "instrument_id") WHERE "instrument_id" IS NOT NULL;
CREATE INDEX "finding_reading_instrument" ON "finding_reading" ("club_id", "instrument_id") WHERE "instrument_id" IS NOT NULL;
