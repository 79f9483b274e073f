-- AlterTable
ALTER TABLE "ApplicationVersion" ADD COLUMN "acidAmount" BIGINT CHECK ("acidAmount" >= 0 AND "acidAmount" = CAST("acidAmount" AS BIGINT));
ALTER TABLE "ApplicationVersion" ADD COLUMN "acidProductId" TEXT;
ALTER TABLE "ApplicationVersion" ADD COLUMN "conditions" TEXT;
ALTER TABLE "ApplicationVersion" ADD COLUMN "cost" BIGINT CHECK ("cost" >= 0 AND "cost" = CAST("cost" AS BIGINT));
ALTER TABLE "ApplicationVersion" ADD COLUMN "leftover" BIGINT CHECK ("leftover" >= 0 AND "leftover" = CAST("leftover" AS BIGINT));
ALTER TABLE "ApplicationVersion" ADD COLUMN "leftoverWent" TEXT;
ALTER TABLE "ApplicationVersion" ADD COLUMN "measuredPh" REAL;
ALTER TABLE "ApplicationVersion" ADD COLUMN "passed" JSONB;
ALTER TABLE "ApplicationVersion" ADD COLUMN "plannedCost" BIGINT CHECK ("plannedCost" >= 0 AND "plannedCost" = CAST("plannedCost" AS BIGINT));
ALTER TABLE "ApplicationVersion" ADD COLUMN "plants" TEXT;
ALTER TABLE "ApplicationVersion" ADD COLUMN "sprayed" BIGINT CHECK ("sprayed" >= 0 AND "sprayed" = CAST("sprayed" AS BIGINT));
ALTER TABLE "ApplicationVersion" ADD COLUMN "sprayedBy" TEXT;
