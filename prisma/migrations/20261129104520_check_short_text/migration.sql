-- AlterTable
ALTER TABLE "rule_check" ADD COLUMN     "short" TEXT;

COMMENT ON COLUMN "rule_check"."short" IS 'The same in a line of a column, for the printed sheet.';
