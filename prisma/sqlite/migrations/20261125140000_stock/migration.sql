-- CreateTable
CREATE TABLE "Stock" (
    "accountId" TEXT NOT NULL,
    "size" TEXT NOT NULL,
    "medium" TEXT NOT NULL,
    "merv" INTEGER NOT NULL,
    "onHand" INTEGER NOT NULL,
    "perBox" INTEGER NOT NULL,

    PRIMARY KEY ("accountId", "size", "medium", "merv"),
    CONSTRAINT "Stock_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
