-- AlterTable
ALTER TABLE "Shop" ADD COLUMN     "conductivityLimit" DOUBLE PRECISION,
ADD COLUMN     "dropMl" DOUBLE PRECISION,
ADD COLUMN     "measures" JSON,
ADD COLUMN     "sprayers" JSON;

-- AlterTable
ALTER TABLE "Supplier" ADD COLUMN     "archivedAt" BIGINT;

-- AlterTable
ALTER TABLE "Product" ADD COLUMN     "archivedAt" BIGINT,
ADD COLUMN     "gtins" JSON;

-- AlterTable
ALTER TABLE "Offer" ADD COLUMN     "archivedAt" BIGINT;

-- AlterTable
ALTER TABLE "Price" ADD COLUMN     "sinceOn" TEXT CHECK ("sinceOn" LIKE '____-__-__');

-- AlterTable
ALTER TABLE "Bench" ADD COLUMN     "area" TEXT;

-- AlterTable
ALTER TABLE "Ingredient" ADD COLUMN     "order" INTEGER CHECK ("order" >= 0);

-- CreateTable
CREATE TABLE "ContainerChange" (
    "shopId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "place" INTEGER NOT NULL CHECK ("place" >= 0),
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "kind" TEXT NOT NULL,
    "was" TEXT,
    "is" TEXT,
    "occurredAt" BIGINT NOT NULL,
    "recordedAt" BIGINT NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "reason" TEXT,

    CONSTRAINT "ContainerChange_pkey" PRIMARY KEY ("shopId","lotId","place","number")
);

-- AddForeignKey
ALTER TABLE "ContainerChange" ADD CONSTRAINT "ContainerChange_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ContainerChange" ADD CONSTRAINT "ContainerChange_shopId_lotId_place_fkey" FOREIGN KEY ("shopId", "lotId", "place") REFERENCES "Container"("shopId", "lotId", "place") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "ContainerChange_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ContainerChange"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
