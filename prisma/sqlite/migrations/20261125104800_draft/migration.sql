-- AlterTable
ALTER TABLE "Household" ADD COLUMN "assumed" TEXT;

-- CreateTable
CREATE TABLE "Draft" (
    "accountId" TEXT NOT NULL PRIMARY KEY,
    "step" TEXT NOT NULL,
    "answers" TEXT NOT NULL,
    "savedAt" TEXT NOT NULL,
    CONSTRAINT "Draft_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
