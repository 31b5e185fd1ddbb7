-- AlterTable
ALTER TABLE "finding" DROP COLUMN "reading_entered",
DROP COLUMN "reading_number",
DROP COLUMN "reading_resolution",
DROP COLUMN "reading_text",
DROP COLUMN "reading_value_kind",
ADD COLUMN     "replaces" UUID[] DEFAULT ARRAY[]::UUID[];

-- AlterTable
ALTER TABLE "entry_decision" ADD COLUMN     "replaces" UUID[] DEFAULT ARRAY[]::UUID[],
ADD COLUMN     "signature" TEXT,
ADD COLUMN     "signed_by" TEXT;

-- CreateTable
CREATE TABLE "finding_reading" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "characteristic" TEXT NOT NULL,
    "side" "Side" NOT NULL DEFAULT 'whole',
    "value_kind" "ValueKind" NOT NULL,
    "entered" TEXT NOT NULL,
    "number" DOUBLE PRECISION,
    "resolution" DOUBLE PRECISION,
    "text" TEXT,

    CONSTRAINT "finding_reading_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "finding_reading_club_id_finding_id_characteristic_side_key" ON "finding_reading"("club_id", "finding_id", "characteristic", "side");

-- AddForeignKey
ALTER TABLE "finding_reading" ADD CONSTRAINT "finding_reading_club_id_finding_id_fkey" FOREIGN KEY ("club_id", "finding_id") REFERENCES "finding"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON TABLE "finding" IS 'What a scrutineer found at one check. Findings are added, never changed: one takes the place of those it names.';
COMMENT ON COLUMN "finding"."found_at" IS 'When, by the server''s clock: the device''s, put right by how far it was off when it sent this.';
COMMENT ON COLUMN "finding"."replaces" IS 'Keys of the findings the scrutineer had seen, whose place this takes.';
COMMENT ON TABLE "finding_reading" IS 'A reading a scrutineer took at one check.';
COMMENT ON COLUMN "finding_reading"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "finding_reading"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "finding_reading"."finding_id" IS 'The finding it belongs to.';
COMMENT ON COLUMN "finding_reading"."characteristic" IS 'Characteristic''s key.';
COMMENT ON COLUMN "finding_reading"."side" IS 'Side.';
COMMENT ON COLUMN "finding_reading"."value_kind" IS 'Value: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "finding_reading"."entered" IS 'Value: what was entered, to the letter.';
COMMENT ON COLUMN "finding_reading"."number" IS 'Value: SI number of a quantity.';
COMMENT ON COLUMN "finding_reading"."resolution" IS 'Value: resolution the entry implies, SI.';
COMMENT ON COLUMN "finding_reading"."text" IS 'Value: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON TABLE "entry_decision" IS 'A scrutineer''s decision on an entry. Decisions are added, never changed: one takes the place of those it names.';
COMMENT ON COLUMN "entry_decision"."decided_at" IS 'When, by the server''s clock: the device''s, put right by how far it was off when it sent this.';
COMMENT ON COLUMN "entry_decision"."signed_by" IS 'Name written under the signature. Personal data.';
COMMENT ON COLUMN "entry_decision"."signature" IS 'Signature as strokes: an SVG path in a box of 600 by 200. Personal data.';
COMMENT ON COLUMN "entry_decision"."replaces" IS 'Keys of the decisions the scrutineer had seen, whose place this takes.';

ALTER TABLE "finding_reading" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "finding_reading" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- A finding that names itself would take its own place and be seen by nobody.
ALTER TABLE "finding" ADD CONSTRAINT "finding_replaces_others" CHECK (NOT client_key = ANY (replaces) AND cardinality(replaces) <= 100);
ALTER TABLE "entry_decision" ADD CONSTRAINT "entry_decision_replaces_others" CHECK (NOT client_key = ANY (replaces) AND cardinality(replaces) <= 100);
ALTER TABLE "entry_decision" ADD CONSTRAINT "entry_decision_signature_size" CHECK (length(signature) <= 20000);
