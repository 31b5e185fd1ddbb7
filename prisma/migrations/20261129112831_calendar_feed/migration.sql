-- CreateTable
CREATE TABLE "calendar_feed" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "membership_id" UUID NOT NULL,
    "label" TEXT NOT NULL,
    "series_id" UUID,
    "token_hash" TEXT NOT NULL,
    "last_read_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "calendar_feed_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "calendar_feed_token_hash_key" ON "calendar_feed"("token_hash");

-- CreateIndex
CREATE INDEX "calendar_feed_club_id_membership_id_idx" ON "calendar_feed"("club_id", "membership_id");

-- CreateIndex
CREATE INDEX "calendar_feed_club_id_series_id_idx" ON "calendar_feed"("club_id", "series_id");

-- CreateIndex
CREATE INDEX "modification_change_club_id_characteristic_idx" ON "modification_change"("club_id", "characteristic");

-- CreateIndex
CREATE INDEX "reading_club_id_characteristic_idx" ON "reading"("club_id", "characteristic");

-- AddForeignKey
ALTER TABLE "calendar_feed" ADD CONSTRAINT "calendar_feed_club_id_membership_id_fkey" FOREIGN KEY ("club_id", "membership_id") REFERENCES "membership"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calendar_feed" ADD CONSTRAINT "calendar_feed_club_id_series_id_fkey" FOREIGN KEY ("club_id", "series_id") REFERENCES "series"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON TABLE "calendar_feed" IS 'A private link by which a calendar program reads what falls due. Only the hash of its token is kept.';
COMMENT ON COLUMN "calendar_feed"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "calendar_feed"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "calendar_feed"."membership_id" IS 'Member whose link it is: it ends with the membership.';
COMMENT ON COLUMN "calendar_feed"."label" IS 'What its maker calls it: "workshop calendar".';
COMMENT ON COLUMN "calendar_feed"."series_id" IS 'Series whose cars it shows; empty for every car.';
COMMENT ON COLUMN "calendar_feed"."token_hash" IS 'SHA-256 (hex) of the token in the link.';
COMMENT ON COLUMN "calendar_feed"."last_read_at" IS 'When it was last read.';
COMMENT ON COLUMN "calendar_feed"."revoked_at" IS 'When it was taken back; a link that was is never valid again.';
COMMENT ON COLUMN "calendar_feed"."recorded_at" IS 'When the row was recorded.';

ALTER TABLE "calendar_feed" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "calendar_feed" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

ALTER TABLE "calendar_feed" ADD CONSTRAINT "calendar_feed_token_hash_shape" CHECK (token_hash ~ '^[0-9a-f]{64}$');

-- Whoever holds the link sees the feed it belongs to, and nothing else.
CREATE POLICY "own_feed" ON "calendar_feed" FOR SELECT
  USING (token_hash = NULLIF(current_setting('trunnion.feed', true), ''));
