-- AlterTable
ALTER TABLE "club" ADD COLUMN     "worked_out_by" INTEGER NOT NULL DEFAULT 0;

COMMENT ON COLUMN "club"."worked_out_by" IS 'Version of the engines that all current values were last worked out by; 0 where nobody knows.';
