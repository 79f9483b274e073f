-- CreateTable
CREATE TABLE "Shop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdOn" TEXT NOT NULL CHECK ("createdOn" LIKE '____-__-__'),
    "revision" BIGINT NOT NULL DEFAULT 0 CHECK ("revision" >= 0 AND "revision" = CAST("revision" AS BIGINT)),
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "units" TEXT NOT NULL,
    "openingHours" JSONB NOT NULL,
    "alkalinityMgPerLCaCO3" REAL,
    "waterPh" REAL,
    "fillCapacity" TEXT NOT NULL,
    "lossPerFill" TEXT NOT NULL,
    "measuringStep" TEXT NOT NULL,
    "safetyDays" INTEGER NOT NULL CHECK ("safetyDays" >= 0 AND "safetyDays" = CAST("safetyDays" AS BIGINT)),
    "wagePerHour" BIGINT CHECK ("wagePerHour" >= 0 AND "wagePerHour" = CAST("wagePerHour" AS BIGINT)),
    "sameModeInARow" INTEGER NOT NULL CHECK ("sameModeInARow" >= 0 AND "sameModeInARow" = CAST("sameModeInARow" AS BIGINT)),
    "capitalPerYear" REAL NOT NULL
);

-- CreateTable
CREATE TABLE "Command" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "shopId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "bodyHash" TEXT NOT NULL,
    "answer" JSONB NOT NULL,
    "actor" TEXT NOT NULL,
    "spokenAt" BIGINT CHECK ("spokenAt" = CAST("spokenAt" AS BIGINT)),
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),
    CONSTRAINT "Command_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Supplier" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "name" TEXT NOT NULL,
    "freightPerOrder" BIGINT CHECK ("freightPerOrder" >= 0 AND "freightPerOrder" = CAST("freightPerOrder" AS BIGINT)),
    "freeFreightOver" BIGINT CHECK ("freeFreightOver" >= 0 AND "freeFreightOver" = CAST("freeFreightOver" AS BIGINT)),
    "minimumOrder" BIGINT CHECK ("minimumOrder" >= 0 AND "minimumOrder" = CAST("minimumOrder" AS BIGINT)),
    "workingDays" JSONB NOT NULL,

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Supplier_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Product" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "form" TEXT NOT NULL,
    "formulation" TEXT,
    "densityGPerMl" REAL,
    "gramsPerTeaspoon" REAL,
    "unopenedDays" INTEGER CHECK ("unopenedDays" >= 0 AND "unopenedDays" = CAST("unopenedDays" AS BIGINT)),
    "openedDays" INTEGER CHECK ("openedDays" >= 0 AND "openedDays" = CAST("openedDays" AS BIGINT)),
    "mixOrder" INTEGER CHECK ("mixOrder" >= 0 AND "mixOrder" = CAST("mixOrder" AS BIGINT)),
    "alkaliSilicate" BOOLEAN NOT NULL,
    "reiHours" REAL,
    "reiMinutes" INTEGER CHECK ("reiMinutes" >= 0 AND "reiMinutes" = CAST("reiMinutes" AS BIGINT)),
    "phiDays" INTEGER CHECK ("phiDays" >= 0 AND "phiDays" = CAST("phiDays" AS BIGINT)),
    "maxApplicationsPerYear" INTEGER CHECK ("maxApplicationsPerYear" >= 0 AND "maxApplicationsPerYear" = CAST("maxApplicationsPerYear" AS BIGINT)),
    "minDaysBetween" INTEGER CHECK ("minDaysBetween" >= 0 AND "minDaysBetween" = CAST("minDaysBetween" AS BIGINT)),
    "modes" JSONB NOT NULL,
    "signalWord" TEXT,
    "protectiveEquipment" JSONB NOT NULL,
    "sprayPhMin" REAL,
    "sprayPhMax" REAL,
    "doNotMixWith" JSONB NOT NULL,
    "registration" TEXT,

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Product_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Content" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "substance" TEXT NOT NULL,
    "amount" REAL NOT NULL,
    "basis" TEXT NOT NULL,

    PRIMARY KEY ("shopId", "productId", "position"),
    CONSTRAINT "Content_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Rate" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "use" TEXT NOT NULL,
    "min" TEXT,
    "max" TEXT,

    PRIMARY KEY ("shopId", "productId", "position"),
    CONSTRAINT "Rate_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Offer" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "supplierId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "packText" TEXT NOT NULL,
    "leadDays" INTEGER CHECK ("leadDays" >= 0 AND "leadDays" = CAST("leadDays" AS BIGINT)),

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Offer_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Offer_shopId_supplierId_fkey" FOREIGN KEY ("shopId", "supplierId") REFERENCES "Supplier" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Offer_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Price" (
    "shopId" TEXT NOT NULL,
    "offerId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "price" BIGINT NOT NULL CHECK ("price" >= 0 AND "price" = CAST("price" AS BIGINT)),
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "offerId", "number"),
    CONSTRAINT "Price_shopId_offerId_fkey" FOREIGN KEY ("shopId", "offerId") REFERENCES "Offer" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "PriceBreak" (
    "shopId" TEXT NOT NULL,
    "offerId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "atLeast" INTEGER NOT NULL CHECK ("atLeast" >= 0 AND "atLeast" = CAST("atLeast" AS BIGINT)),
    "price" BIGINT NOT NULL CHECK ("price" >= 0 AND "price" = CAST("price" AS BIGINT)),

    PRIMARY KEY ("shopId", "offerId", "number", "position"),
    CONSTRAINT "PriceBreak_shopId_offerId_number_fkey" FOREIGN KEY ("shopId", "offerId", "number") REFERENCES "Price" ("shopId", "offerId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Lot" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "productId" TEXT NOT NULL,
    "packText" TEXT NOT NULL,
    "pack" BIGINT NOT NULL CHECK ("pack" > 0 AND "pack" = CAST("pack" AS BIGINT)),
    "count" INTEGER NOT NULL CHECK ("count" > 0 AND "count" = CAST("count" AS BIGINT)),
    "receivedOn" TEXT NOT NULL CHECK ("receivedOn" LIKE '____-__-__'),

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Lot_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Lot_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Container" (
    "shopId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "place" INTEGER NOT NULL CHECK ("place" >= 0 AND "place" = CAST("place" AS BIGINT)),
    "paid" BIGINT CHECK ("paid" >= 0 AND "paid" = CAST("paid" AS BIGINT)),
    "openedOn" TEXT CHECK ("openedOn" LIKE '____-__-__'),
    "expiresOn" TEXT CHECK ("expiresOn" LIKE '____-__-__'),
    "keptIn" TEXT,

    PRIMARY KEY ("shopId", "lotId", "place"),
    CONSTRAINT "Container_shopId_lotId_fkey" FOREIGN KEY ("shopId", "lotId") REFERENCES "Lot" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Movement" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "number" BIGINT NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "lotId" TEXT NOT NULL,
    "place" INTEGER NOT NULL CHECK ("place" >= 0 AND "place" = CAST("place" AS BIGINT)),
    "kind" TEXT NOT NULL,
    "fromSide" TEXT NOT NULL,
    "toSide" TEXT NOT NULL,
    "amount" BIGINT NOT NULL CHECK ("amount" > 0 AND "amount" = CAST("amount" AS BIGINT)),
    "occurredAt" BIGINT NOT NULL CHECK ("occurredAt" = CAST("occurredAt" AS BIGINT)),
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "reversesId" TEXT,
    "applicationId" TEXT,
    "reason" TEXT,

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Movement_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Movement_shopId_lotId_place_fkey" FOREIGN KEY ("shopId", "lotId", "place") REFERENCES "Container" ("shopId", "lotId", "place") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Movement_shopId_reversesId_fkey" FOREIGN KEY ("shopId", "reversesId") REFERENCES "Movement" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Movement_shopId_applicationId_fkey" FOREIGN KEY ("shopId", "applicationId") REFERENCES "Application" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Bench" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "name" TEXT NOT NULL,
    "customers" BOOLEAN NOT NULL,
    "enclosed" BOOLEAN NOT NULL,
    "coverage" REAL NOT NULL,

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Bench_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "PlantGroup" (
    "shopId" TEXT NOT NULL,
    "benchId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "name" TEXT NOT NULL,
    "pot" TEXT,
    "count" INTEGER NOT NULL CHECK ("count" >= 0 AND "count" = CAST("count" AS BIGINT)),
    "mlPerPlant" REAL,

    PRIMARY KEY ("shopId", "benchId", "position"),
    CONSTRAINT "PlantGroup_shopId_benchId_fkey" FOREIGN KEY ("shopId", "benchId") REFERENCES "Bench" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Recipe" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Recipe_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "RecipeVersion" (
    "shopId" TEXT NOT NULL,
    "recipeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "name" TEXT NOT NULL,
    "targetPh" REAL,
    "useWithinHours" REAL,
    "useWithinMinutes" INTEGER CHECK ("useWithinMinutes" >= 0 AND "useWithinMinutes" = CAST("useWithinMinutes" AS BIGINT)),
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "recipeId", "number"),
    CONSTRAINT "RecipeVersion_shopId_recipeId_fkey" FOREIGN KEY ("shopId", "recipeId") REFERENCES "Recipe" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Ingredient" (
    "shopId" TEXT NOT NULL,
    "recipeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "productId" TEXT NOT NULL,
    "dose" TEXT NOT NULL,
    "use" TEXT,

    PRIMARY KEY ("shopId", "recipeId", "number", "position"),
    CONSTRAINT "Ingredient_shopId_recipeId_number_fkey" FOREIGN KEY ("shopId", "recipeId", "number") REFERENCES "RecipeVersion" ("shopId", "recipeId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Ingredient_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Program" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "startsOn" TEXT NOT NULL CHECK ("startsOn" LIKE '____-__-__'),
    "endsOn" TEXT CHECK ("endsOn" LIKE '____-__-__'),
    "repeat" TEXT,
    "startMinute" INTEGER NOT NULL CHECK ("startMinute" >= 0 AND "startMinute" = CAST("startMinute" AS BIGINT)),
    "minutes" INTEGER NOT NULL CHECK ("minutes" >= 0 AND "minutes" = CAST("minutes" AS BIGINT)),

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Program_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "ProgramRecipe" (
    "shopId" TEXT NOT NULL,
    "programId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "recipeId" TEXT NOT NULL,

    PRIMARY KEY ("shopId", "programId", "position"),
    CONSTRAINT "ProgramRecipe_shopId_programId_fkey" FOREIGN KEY ("shopId", "programId") REFERENCES "Program" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "ProgramRecipe_shopId_recipeId_fkey" FOREIGN KEY ("shopId", "recipeId") REFERENCES "Recipe" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "ProgramBench" (
    "shopId" TEXT NOT NULL,
    "programId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "benchId" TEXT NOT NULL,

    PRIMARY KEY ("shopId", "programId", "position"),
    CONSTRAINT "ProgramBench_shopId_programId_fkey" FOREIGN KEY ("shopId", "programId") REFERENCES "Program" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "ProgramBench_shopId_benchId_fkey" FOREIGN KEY ("shopId", "benchId") REFERENCES "Bench" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "SprayingChange" (
    "shopId" TEXT NOT NULL,
    "programId" TEXT NOT NULL,
    "plannedOn" TEXT NOT NULL CHECK ("plannedOn" LIKE '____-__-__'),
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "kind" TEXT NOT NULL,
    "movedToOn" TEXT CHECK ("movedToOn" LIKE '____-__-__'),
    "movedToMinute" INTEGER CHECK ("movedToMinute" >= 0 AND "movedToMinute" = CAST("movedToMinute" AS BIGINT)),
    "applicationId" TEXT,
    "reason" TEXT,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "programId", "plannedOn", "number"),
    CONSTRAINT "SprayingChange_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "SprayingChange_shopId_programId_fkey" FOREIGN KEY ("shopId", "programId") REFERENCES "Program" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "SprayingChange_shopId_applicationId_fkey" FOREIGN KEY ("shopId", "applicationId") REFERENCES "Application" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Application" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "Application_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "ApplicationVersion" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "recipeId" TEXT NOT NULL,
    "recipeNumber" INTEGER NOT NULL CHECK ("recipeNumber" >= 0 AND "recipeNumber" = CAST("recipeNumber" AS BIGINT)),
    "startedAt" BIGINT NOT NULL CHECK ("startedAt" = CAST("startedAt" AS BIGINT)),
    "endedAt" BIGINT CHECK ("endedAt" = CAST("endedAt" AS BIGINT)),
    "reason" TEXT,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "applicationId", "number"),
    CONSTRAINT "ApplicationVersion_shopId_applicationId_fkey" FOREIGN KEY ("shopId", "applicationId") REFERENCES "Application" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "ApplicationVersion_shopId_recipeId_recipeNumber_fkey" FOREIGN KEY ("shopId", "recipeId", "recipeNumber") REFERENCES "RecipeVersion" ("shopId", "recipeId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "ApplicationBench" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "benchId" TEXT NOT NULL,

    PRIMARY KEY ("shopId", "applicationId", "number", "position"),
    CONSTRAINT "ApplicationBench_shopId_applicationId_number_fkey" FOREIGN KEY ("shopId", "applicationId", "number") REFERENCES "ApplicationVersion" ("shopId", "applicationId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "ApplicationBench_shopId_benchId_fkey" FOREIGN KEY ("shopId", "benchId") REFERENCES "Bench" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "ApplicationProduct" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "productId" TEXT NOT NULL,
    "dose" TEXT NOT NULL,
    "amount" BIGINT CHECK ("amount" >= 0 AND "amount" = CAST("amount" AS BIGINT)),
    "reiMinutes" INTEGER CHECK ("reiMinutes" >= 0 AND "reiMinutes" = CAST("reiMinutes" AS BIGINT)),

    PRIMARY KEY ("shopId", "applicationId", "number", "position"),
    CONSTRAINT "ApplicationProduct_shopId_applicationId_number_fkey" FOREIGN KEY ("shopId", "applicationId", "number") REFERENCES "ApplicationVersion" ("shopId", "applicationId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "ApplicationProduct_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
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

CREATE TRIGGER "Command_no_update" BEFORE UPDATE ON "Command"
BEGIN
  SELECT RAISE(ABORT, 'Command only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Command_no_delete" BEFORE DELETE ON "Command"
BEGIN
  SELECT RAISE(ABORT, 'Command only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Price_no_update" BEFORE UPDATE ON "Price"
BEGIN
  SELECT RAISE(ABORT, 'Price only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Price_no_delete" BEFORE DELETE ON "Price"
BEGIN
  SELECT RAISE(ABORT, 'Price only grows: correct a row by adding another one');
END;

CREATE TRIGGER "PriceBreak_no_update" BEFORE UPDATE ON "PriceBreak"
BEGIN
  SELECT RAISE(ABORT, 'PriceBreak only grows: correct a row by adding another one');
END;

CREATE TRIGGER "PriceBreak_no_delete" BEFORE DELETE ON "PriceBreak"
BEGIN
  SELECT RAISE(ABORT, 'PriceBreak only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Movement_no_update" BEFORE UPDATE ON "Movement"
BEGIN
  SELECT RAISE(ABORT, 'Movement only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Movement_no_delete" BEFORE DELETE ON "Movement"
BEGIN
  SELECT RAISE(ABORT, 'Movement only grows: correct a row by adding another one');
END;

CREATE TRIGGER "RecipeVersion_no_update" BEFORE UPDATE ON "RecipeVersion"
BEGIN
  SELECT RAISE(ABORT, 'RecipeVersion only grows: correct a row by adding another one');
END;

CREATE TRIGGER "RecipeVersion_no_delete" BEFORE DELETE ON "RecipeVersion"
BEGIN
  SELECT RAISE(ABORT, 'RecipeVersion only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Ingredient_no_update" BEFORE UPDATE ON "Ingredient"
BEGIN
  SELECT RAISE(ABORT, 'Ingredient only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Ingredient_no_delete" BEFORE DELETE ON "Ingredient"
BEGIN
  SELECT RAISE(ABORT, 'Ingredient only grows: correct a row by adding another one');
END;

CREATE TRIGGER "SprayingChange_no_update" BEFORE UPDATE ON "SprayingChange"
BEGIN
  SELECT RAISE(ABORT, 'SprayingChange only grows: correct a row by adding another one');
END;

CREATE TRIGGER "SprayingChange_no_delete" BEFORE DELETE ON "SprayingChange"
BEGIN
  SELECT RAISE(ABORT, 'SprayingChange only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Application_no_update" BEFORE UPDATE ON "Application"
BEGIN
  SELECT RAISE(ABORT, 'Application only grows: correct a row by adding another one');
END;

CREATE TRIGGER "Application_no_delete" BEFORE DELETE ON "Application"
BEGIN
  SELECT RAISE(ABORT, 'Application only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ApplicationVersion_no_update" BEFORE UPDATE ON "ApplicationVersion"
BEGIN
  SELECT RAISE(ABORT, 'ApplicationVersion only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ApplicationVersion_no_delete" BEFORE DELETE ON "ApplicationVersion"
BEGIN
  SELECT RAISE(ABORT, 'ApplicationVersion only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ApplicationBench_no_update" BEFORE UPDATE ON "ApplicationBench"
BEGIN
  SELECT RAISE(ABORT, 'ApplicationBench only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ApplicationBench_no_delete" BEFORE DELETE ON "ApplicationBench"
BEGIN
  SELECT RAISE(ABORT, 'ApplicationBench only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ApplicationProduct_no_update" BEFORE UPDATE ON "ApplicationProduct"
BEGIN
  SELECT RAISE(ABORT, 'ApplicationProduct only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ApplicationProduct_no_delete" BEFORE DELETE ON "ApplicationProduct"
BEGIN
  SELECT RAISE(ABORT, 'ApplicationProduct only grows: correct a row by adding another one');
END;
