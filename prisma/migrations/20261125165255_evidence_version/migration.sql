-- AlterTable
ALTER TABLE "evidence" ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

COMMENT ON COLUMN "evidence"."version" IS 'Counts up with every change; guards against two editors.';
