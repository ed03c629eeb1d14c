-- AlterTable
ALTER TABLE "Reading" ADD COLUMN     "addedBy" TEXT COLLATE "C",
ADD COLUMN     "removedBy" TEXT COLLATE "C";

-- CreateTable
CREATE TABLE "WeatherSpell" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "from" TEXT COLLATE "C" NOT NULL,
    "to" TEXT COLLATE "C" NOT NULL,
    "highF" DOUBLE PRECISION NOT NULL,
    "lowF" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "WeatherSpell_pkey" PRIMARY KEY ("householdId","position")
);

-- CreateTable
CREATE TABLE "Measuring" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "system" TEXT COLLATE "C" NOT NULL,
    "from" TEXT COLLATE "C" NOT NULL,
    "to" TEXT COLLATE "C" NOT NULL,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "door" TEXT COLLATE "C" NOT NULL,
    "undoneAt" TEXT COLLATE "C",
    "undoneBy" TEXT COLLATE "C",

    CONSTRAINT "Measuring_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Measuring_householdId_at_idx" ON "Measuring"("householdId", "at");

-- AddForeignKey
ALTER TABLE "WeatherSpell" ADD CONSTRAINT "WeatherSpell_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Measuring" ADD CONSTRAINT "Measuring_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;
