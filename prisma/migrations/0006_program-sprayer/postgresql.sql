-- AlterTable
ALTER TABLE "Program" ADD COLUMN     "sprayer" TEXT;
