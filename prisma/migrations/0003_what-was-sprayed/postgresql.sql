-- AlterTable
ALTER TABLE "ApplicationVersion" ADD COLUMN     "acidAmount" BIGINT CHECK ("acidAmount" >= 0),
ADD COLUMN     "acidProductId" TEXT,
ADD COLUMN     "conditions" TEXT,
ADD COLUMN     "cost" BIGINT CHECK ("cost" >= 0),
ADD COLUMN     "leftover" BIGINT CHECK ("leftover" >= 0),
ADD COLUMN     "leftoverWent" TEXT,
ADD COLUMN     "measuredPh" DOUBLE PRECISION,
ADD COLUMN     "passed" JSON,
ADD COLUMN     "plannedCost" BIGINT CHECK ("plannedCost" >= 0),
ADD COLUMN     "plants" TEXT,
ADD COLUMN     "sprayed" BIGINT CHECK ("sprayed" >= 0),
ADD COLUMN     "sprayedBy" TEXT;
