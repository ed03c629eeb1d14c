-- AlterTable
ALTER TABLE "Reading" ADD COLUMN "addedBy" TEXT;
ALTER TABLE "Reading" ADD COLUMN "removedBy" TEXT;

-- CreateTable
CREATE TABLE "WeatherSpell" (
    "householdId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "highF" REAL NOT NULL,
    "lowF" REAL NOT NULL,

    PRIMARY KEY ("householdId", "position"),
    CONSTRAINT "WeatherSpell_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Measuring" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "system" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    "undoneAt" TEXT,
    "undoneBy" TEXT,
    CONSTRAINT "Measuring_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Measuring_householdId_at_idx" ON "Measuring"("householdId", "at");
