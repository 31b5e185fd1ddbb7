-- CreateEnum
CREATE TYPE "RuleSetStatus" AS ENUM ('draft', 'current', 'superseded');

-- AlterTable
ALTER TABLE "rule_set" ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "status" "RuleSetStatus" NOT NULL DEFAULT 'current';

COMMENT ON TYPE "RuleSetStatus" IS 'How a version of a rule set stands.';
COMMENT ON COLUMN "rule_set"."status" IS 'Draft, current or superseded; one current version and one draft a rule set. Only a draft is edited.';
COMMENT ON COLUMN "rule_set"."revision" IS 'Counts up with every change of a draft; guards against two editors.';

-- Of versions there are already, the latest is the current one.
UPDATE "rule_set" AS earlier SET "status" = 'superseded'
WHERE EXISTS (
  SELECT 1 FROM "rule_set" AS later
  WHERE later.club_id = earlier.club_id AND later.slug = earlier.slug AND later.version > earlier.version
);
CREATE UNIQUE INDEX "rule_set_one_current" ON "rule_set" ("club_id", "slug") WHERE "status" = 'current';
CREATE UNIQUE INDEX "rule_set_one_draft" ON "rule_set" ("club_id", "slug") WHERE "status" = 'draft';
