CREATE FUNCTION only_grows() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% only grows: correct a row by adding another one', TG_TABLE_NAME;
END;
$$;

-- CreateTable
CREATE TABLE "Shop" (
    "id" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdOn" TEXT NOT NULL CHECK ("createdOn" LIKE '____-__-__'),
    "revision" BIGINT NOT NULL DEFAULT 0 CHECK ("revision" >= 0),
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "units" TEXT NOT NULL,
    "openingHours" JSON NOT NULL,
    "alkalinityMgPerLCaCO3" DOUBLE PRECISION,
    "waterPh" DOUBLE PRECISION,
    "fillCapacity" TEXT NOT NULL,
    "lossPerFill" TEXT NOT NULL,
    "measuringStep" TEXT NOT NULL,
    "safetyDays" INTEGER NOT NULL CHECK ("safetyDays" >= 0),
    "wagePerHour" BIGINT CHECK ("wagePerHour" >= 0),
    "sameModeInARow" INTEGER NOT NULL CHECK ("sameModeInARow" >= 0),
    "capitalPerYear" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "Shop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Command" (
    "id" TEXT NOT NULL,
    "shopId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "bodyHash" TEXT NOT NULL,
    "answer" JSON NOT NULL,
    "actor" TEXT NOT NULL,
    "spokenAt" BIGINT,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "Command_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Supplier" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "name" TEXT NOT NULL,
    "freightPerOrder" BIGINT CHECK ("freightPerOrder" >= 0),
    "freeFreightOver" BIGINT CHECK ("freeFreightOver" >= 0),
    "minimumOrder" BIGINT CHECK ("minimumOrder" >= 0),
    "workingDays" JSON NOT NULL,

    CONSTRAINT "Supplier_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "Product" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "form" TEXT NOT NULL,
    "formulation" TEXT,
    "densityGPerMl" DOUBLE PRECISION,
    "gramsPerTeaspoon" DOUBLE PRECISION,
    "unopenedDays" INTEGER CHECK ("unopenedDays" >= 0),
    "openedDays" INTEGER CHECK ("openedDays" >= 0),
    "mixOrder" INTEGER CHECK ("mixOrder" >= 0),
    "alkaliSilicate" BOOLEAN NOT NULL,
    "reiHours" DOUBLE PRECISION,
    "reiMinutes" INTEGER CHECK ("reiMinutes" >= 0),
    "phiDays" INTEGER CHECK ("phiDays" >= 0),
    "maxApplicationsPerYear" INTEGER CHECK ("maxApplicationsPerYear" >= 0),
    "minDaysBetween" INTEGER CHECK ("minDaysBetween" >= 0),
    "modes" JSON NOT NULL,
    "signalWord" TEXT,
    "protectiveEquipment" JSON NOT NULL,
    "sprayPhMin" DOUBLE PRECISION,
    "sprayPhMax" DOUBLE PRECISION,
    "doNotMixWith" JSON NOT NULL,
    "registration" TEXT,

    CONSTRAINT "Product_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "Content" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "substance" TEXT NOT NULL,
    "amount" DOUBLE PRECISION NOT NULL,
    "basis" TEXT NOT NULL,

    CONSTRAINT "Content_pkey" PRIMARY KEY ("shopId","productId","position")
);

-- CreateTable
CREATE TABLE "Rate" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "use" TEXT NOT NULL,
    "min" TEXT,
    "max" TEXT,

    CONSTRAINT "Rate_pkey" PRIMARY KEY ("shopId","productId","position")
);

-- CreateTable
CREATE TABLE "Offer" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "supplierId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "packText" TEXT NOT NULL,
    "leadDays" INTEGER CHECK ("leadDays" >= 0),

    CONSTRAINT "Offer_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "Price" (
    "shopId" TEXT NOT NULL,
    "offerId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "price" BIGINT NOT NULL CHECK ("price" >= 0),
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "Price_pkey" PRIMARY KEY ("shopId","offerId","number")
);

-- CreateTable
CREATE TABLE "PriceBreak" (
    "shopId" TEXT NOT NULL,
    "offerId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "atLeast" INTEGER NOT NULL CHECK ("atLeast" >= 0),
    "price" BIGINT NOT NULL CHECK ("price" >= 0),

    CONSTRAINT "PriceBreak_pkey" PRIMARY KEY ("shopId","offerId","number","position")
);

-- CreateTable
CREATE TABLE "Lot" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "productId" TEXT NOT NULL,
    "packText" TEXT NOT NULL,
    "pack" BIGINT NOT NULL CHECK ("pack" > 0),
    "count" INTEGER NOT NULL CHECK ("count" > 0),
    "receivedOn" TEXT NOT NULL CHECK ("receivedOn" LIKE '____-__-__'),

    CONSTRAINT "Lot_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "Container" (
    "shopId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "place" INTEGER NOT NULL CHECK ("place" >= 0),
    "paid" BIGINT CHECK ("paid" >= 0),
    "openedOn" TEXT CHECK ("openedOn" LIKE '____-__-__'),
    "expiresOn" TEXT CHECK ("expiresOn" LIKE '____-__-__'),
    "keptIn" TEXT,

    CONSTRAINT "Container_pkey" PRIMARY KEY ("shopId","lotId","place")
);

-- CreateTable
CREATE TABLE "Movement" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "number" BIGINT NOT NULL CHECK ("number" >= 0),
    "lotId" TEXT NOT NULL,
    "place" INTEGER NOT NULL CHECK ("place" >= 0),
    "kind" TEXT NOT NULL,
    "fromSide" TEXT NOT NULL,
    "toSide" TEXT NOT NULL,
    "amount" BIGINT NOT NULL CHECK ("amount" > 0),
    "occurredAt" BIGINT NOT NULL,
    "recordedAt" BIGINT NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "reversesId" TEXT,
    "applicationId" TEXT,
    "reason" TEXT,

    CONSTRAINT "Movement_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "Bench" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "name" TEXT NOT NULL,
    "customers" BOOLEAN NOT NULL,
    "enclosed" BOOLEAN NOT NULL,
    "coverage" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "Bench_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "PlantGroup" (
    "shopId" TEXT NOT NULL,
    "benchId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "name" TEXT NOT NULL,
    "pot" TEXT,
    "count" INTEGER NOT NULL CHECK ("count" >= 0),
    "mlPerPlant" DOUBLE PRECISION,

    CONSTRAINT "PlantGroup_pkey" PRIMARY KEY ("shopId","benchId","position")
);

-- CreateTable
CREATE TABLE "Recipe" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),

    CONSTRAINT "Recipe_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "RecipeVersion" (
    "shopId" TEXT NOT NULL,
    "recipeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "name" TEXT NOT NULL,
    "targetPh" DOUBLE PRECISION,
    "useWithinHours" DOUBLE PRECISION,
    "useWithinMinutes" INTEGER CHECK ("useWithinMinutes" >= 0),
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "RecipeVersion_pkey" PRIMARY KEY ("shopId","recipeId","number")
);

-- CreateTable
CREATE TABLE "Ingredient" (
    "shopId" TEXT NOT NULL,
    "recipeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "productId" TEXT NOT NULL,
    "dose" TEXT NOT NULL,
    "use" TEXT,

    CONSTRAINT "Ingredient_pkey" PRIMARY KEY ("shopId","recipeId","number","position")
);

-- CreateTable
CREATE TABLE "Program" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "startsOn" TEXT NOT NULL CHECK ("startsOn" LIKE '____-__-__'),
    "endsOn" TEXT CHECK ("endsOn" LIKE '____-__-__'),
    "repeat" TEXT,
    "startMinute" INTEGER NOT NULL CHECK ("startMinute" >= 0),
    "minutes" INTEGER NOT NULL CHECK ("minutes" >= 0),

    CONSTRAINT "Program_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "ProgramRecipe" (
    "shopId" TEXT NOT NULL,
    "programId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "recipeId" TEXT NOT NULL,

    CONSTRAINT "ProgramRecipe_pkey" PRIMARY KEY ("shopId","programId","position")
);

-- CreateTable
CREATE TABLE "ProgramBench" (
    "shopId" TEXT NOT NULL,
    "programId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "benchId" TEXT NOT NULL,

    CONSTRAINT "ProgramBench_pkey" PRIMARY KEY ("shopId","programId","position")
);

-- CreateTable
CREATE TABLE "SprayingChange" (
    "shopId" TEXT NOT NULL,
    "programId" TEXT NOT NULL,
    "plannedOn" TEXT NOT NULL CHECK ("plannedOn" LIKE '____-__-__'),
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "kind" TEXT NOT NULL,
    "movedToOn" TEXT CHECK ("movedToOn" LIKE '____-__-__'),
    "movedToMinute" INTEGER CHECK ("movedToMinute" >= 0),
    "applicationId" TEXT,
    "reason" TEXT,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "SprayingChange_pkey" PRIMARY KEY ("shopId","programId","plannedOn","number")
);

-- CreateTable
CREATE TABLE "Application" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),

    CONSTRAINT "Application_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "ApplicationVersion" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "recipeId" TEXT NOT NULL,
    "recipeNumber" INTEGER NOT NULL CHECK ("recipeNumber" >= 0),
    "startedAt" BIGINT NOT NULL,
    "endedAt" BIGINT,
    "reason" TEXT,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "ApplicationVersion_pkey" PRIMARY KEY ("shopId","applicationId","number")
);

-- CreateTable
CREATE TABLE "ApplicationBench" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "benchId" TEXT NOT NULL,

    CONSTRAINT "ApplicationBench_pkey" PRIMARY KEY ("shopId","applicationId","number","position")
);

-- CreateTable
CREATE TABLE "ApplicationProduct" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "productId" TEXT NOT NULL,
    "dose" TEXT NOT NULL,
    "amount" BIGINT CHECK ("amount" >= 0),
    "reiMinutes" INTEGER CHECK ("reiMinutes" >= 0),

    CONSTRAINT "ApplicationProduct_pkey" PRIMARY KEY ("shopId","applicationId","number","position")
);

-- CreateIndex
CREATE INDEX "Command_shopId_recordedAt_idx" ON "Command"("shopId", "recordedAt");

-- CreateIndex
CREATE INDEX "Lot_shopId_productId_idx" ON "Lot"("shopId", "productId");

-- CreateIndex
CREATE INDEX "Movement_shopId_lotId_place_idx" ON "Movement"("shopId", "lotId", "place");

-- CreateIndex
CREATE UNIQUE INDEX "Movement_shopId_number_key" ON "Movement"("shopId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Movement_shopId_reversesId_key" ON "Movement"("shopId", "reversesId");

-- AddForeignKey
ALTER TABLE "Command" ADD CONSTRAINT "Command_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Supplier" ADD CONSTRAINT "Supplier_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Product" ADD CONSTRAINT "Product_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Content" ADD CONSTRAINT "Content_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Rate" ADD CONSTRAINT "Rate_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Offer" ADD CONSTRAINT "Offer_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Offer" ADD CONSTRAINT "Offer_shopId_supplierId_fkey" FOREIGN KEY ("shopId", "supplierId") REFERENCES "Supplier"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Offer" ADD CONSTRAINT "Offer_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Price" ADD CONSTRAINT "Price_shopId_offerId_fkey" FOREIGN KEY ("shopId", "offerId") REFERENCES "Offer"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "PriceBreak" ADD CONSTRAINT "PriceBreak_shopId_offerId_number_fkey" FOREIGN KEY ("shopId", "offerId", "number") REFERENCES "Price"("shopId", "offerId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Lot" ADD CONSTRAINT "Lot_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Lot" ADD CONSTRAINT "Lot_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Container" ADD CONSTRAINT "Container_shopId_lotId_fkey" FOREIGN KEY ("shopId", "lotId") REFERENCES "Lot"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_shopId_lotId_place_fkey" FOREIGN KEY ("shopId", "lotId", "place") REFERENCES "Container"("shopId", "lotId", "place") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_shopId_reversesId_fkey" FOREIGN KEY ("shopId", "reversesId") REFERENCES "Movement"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_shopId_applicationId_fkey" FOREIGN KEY ("shopId", "applicationId") REFERENCES "Application"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Bench" ADD CONSTRAINT "Bench_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "PlantGroup" ADD CONSTRAINT "PlantGroup_shopId_benchId_fkey" FOREIGN KEY ("shopId", "benchId") REFERENCES "Bench"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Recipe" ADD CONSTRAINT "Recipe_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "RecipeVersion" ADD CONSTRAINT "RecipeVersion_shopId_recipeId_fkey" FOREIGN KEY ("shopId", "recipeId") REFERENCES "Recipe"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Ingredient" ADD CONSTRAINT "Ingredient_shopId_recipeId_number_fkey" FOREIGN KEY ("shopId", "recipeId", "number") REFERENCES "RecipeVersion"("shopId", "recipeId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Ingredient" ADD CONSTRAINT "Ingredient_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Program" ADD CONSTRAINT "Program_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ProgramRecipe" ADD CONSTRAINT "ProgramRecipe_shopId_programId_fkey" FOREIGN KEY ("shopId", "programId") REFERENCES "Program"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ProgramRecipe" ADD CONSTRAINT "ProgramRecipe_shopId_recipeId_fkey" FOREIGN KEY ("shopId", "recipeId") REFERENCES "Recipe"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ProgramBench" ADD CONSTRAINT "ProgramBench_shopId_programId_fkey" FOREIGN KEY ("shopId", "programId") REFERENCES "Program"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ProgramBench" ADD CONSTRAINT "ProgramBench_shopId_benchId_fkey" FOREIGN KEY ("shopId", "benchId") REFERENCES "Bench"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "SprayingChange" ADD CONSTRAINT "SprayingChange_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "SprayingChange" ADD CONSTRAINT "SprayingChange_shopId_programId_fkey" FOREIGN KEY ("shopId", "programId") REFERENCES "Program"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "SprayingChange" ADD CONSTRAINT "SprayingChange_shopId_applicationId_fkey" FOREIGN KEY ("shopId", "applicationId") REFERENCES "Application"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Application" ADD CONSTRAINT "Application_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ApplicationVersion" ADD CONSTRAINT "ApplicationVersion_shopId_applicationId_fkey" FOREIGN KEY ("shopId", "applicationId") REFERENCES "Application"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ApplicationVersion" ADD CONSTRAINT "ApplicationVersion_shopId_recipeId_recipeNumber_fkey" FOREIGN KEY ("shopId", "recipeId", "recipeNumber") REFERENCES "RecipeVersion"("shopId", "recipeId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ApplicationBench" ADD CONSTRAINT "ApplicationBench_shopId_applicationId_number_fkey" FOREIGN KEY ("shopId", "applicationId", "number") REFERENCES "ApplicationVersion"("shopId", "applicationId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ApplicationBench" ADD CONSTRAINT "ApplicationBench_shopId_benchId_fkey" FOREIGN KEY ("shopId", "benchId") REFERENCES "Bench"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ApplicationProduct" ADD CONSTRAINT "ApplicationProduct_shopId_applicationId_number_fkey" FOREIGN KEY ("shopId", "applicationId", "number") REFERENCES "ApplicationVersion"("shopId", "applicationId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ApplicationProduct" ADD CONSTRAINT "ApplicationProduct_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "Command_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "Command"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "Price_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "Price"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "PriceBreak_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "PriceBreak"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "Movement_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "Movement"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "RecipeVersion_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "RecipeVersion"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "Ingredient_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "Ingredient"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "SprayingChange_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "SprayingChange"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "Application_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "Application"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "ApplicationVersion_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ApplicationVersion"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "ApplicationBench_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ApplicationBench"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "ApplicationProduct_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ApplicationProduct"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
