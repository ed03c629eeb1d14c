-- AlterTable
ALTER TABLE "Reminded" ADD COLUMN "messageId" TEXT;

-- CreateIndex
CREATE INDEX "Reminded_messageId_idx" ON "Reminded"("messageId");
