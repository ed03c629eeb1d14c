-- AlterTable
ALTER TABLE "Invitation" ADD COLUMN "building" TEXT;
