-- AlterTable
ALTER TABLE "OnlineCue" ADD COLUMN "ownerHash" TEXT;

-- CreateTable
CREATE TABLE "ServerSecret" (
    "name" TEXT NOT NULL PRIMARY KEY,
    "value" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateIndex
CREATE INDEX "ServerSecret_createdAt_idx" ON "ServerSecret"("createdAt");

-- CreateIndex
CREATE INDEX "OnlineCue_ownerHash_idx" ON "OnlineCue"("ownerHash");
