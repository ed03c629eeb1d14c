-- AlterTable
ALTER TABLE "System" ADD COLUMN "dustMedian" REAL;
ALTER TABLE "System" ADD COLUMN "dustSpread" REAL;
ALTER TABLE "System" ADD COLUMN "dustSystems" INTEGER;

-- AlterTable
ALTER TABLE "User" ADD COLUMN "poolsDust" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "User" ADD COLUMN "pooledOn" TEXT;
