-- AlterTable
ALTER TABLE "OnlineCue" ADD COLUMN     "ownerHash" TEXT;

-- CreateTable
CREATE TABLE "ServerSecret" (
    "name" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ServerSecret_pkey" PRIMARY KEY ("name")
);

-- CreateIndex
CREATE INDEX "ServerSecret_createdAt_idx" ON "ServerSecret"("createdAt");

-- CreateIndex
CREATE INDEX "OnlineCue_ownerHash_idx" ON "OnlineCue"("ownerHash");


