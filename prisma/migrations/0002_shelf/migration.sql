-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "conductivityLimit" REAL;
ALTER TABLE "Shop" ADD COLUMN "dropMl" REAL;
ALTER TABLE "Shop" ADD COLUMN "measures" JSONB;
ALTER TABLE "Shop" ADD COLUMN "sprayers" JSONB;

-- AlterTable
ALTER TABLE "Supplier" ADD COLUMN "archivedAt" BIGINT CHECK ("archivedAt" = CAST("archivedAt" AS BIGINT));

-- AlterTable
ALTER TABLE "Product" ADD COLUMN "archivedAt" BIGINT CHECK ("archivedAt" = CAST("archivedAt" AS BIGINT));
ALTER TABLE "Product" ADD COLUMN "gtins" JSONB;

-- AlterTable
ALTER TABLE "Offer" ADD COLUMN "archivedAt" BIGINT CHECK ("archivedAt" = CAST("archivedAt" AS BIGINT));

-- AlterTable
ALTER TABLE "Price" ADD COLUMN "sinceOn" TEXT CHECK ("sinceOn" LIKE '____-__-__');

-- AlterTable
ALTER TABLE "Bench" ADD COLUMN "area" TEXT;

-- AlterTable
ALTER TABLE "Ingredient" ADD COLUMN "order" INTEGER CHECK ("order" >= 0 AND "order" = CAST("order" AS BIGINT));

-- CreateTable
CREATE TABLE "ContainerChange" (
    "shopId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "place" INTEGER NOT NULL CHECK ("place" >= 0 AND "place" = CAST("place" AS BIGINT)),
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "kind" TEXT NOT NULL,
    "was" TEXT,
    "is" TEXT,
    "occurredAt" BIGINT NOT NULL CHECK ("occurredAt" = CAST("occurredAt" AS BIGINT)),
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "reason" TEXT,

    PRIMARY KEY ("shopId", "lotId", "place", "number"),
    CONSTRAINT "ContainerChange_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "ContainerChange_shopId_lotId_place_fkey" FOREIGN KEY ("shopId", "lotId", "place") REFERENCES "Container" ("shopId", "lotId", "place") ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TRIGGER "ContainerChange_no_update" BEFORE UPDATE ON "ContainerChange"
BEGIN
  SELECT RAISE(ABORT, 'ContainerChange only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ContainerChange_no_delete" BEFORE DELETE ON "ContainerChange"
BEGIN
  SELECT RAISE(ABORT, 'ContainerChange only grows: correct a row by adding another one');
END;
