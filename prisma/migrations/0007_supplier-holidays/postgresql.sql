-- AlterTable
ALTER TABLE "Supplier" ADD COLUMN     "closedOn" JSON;
