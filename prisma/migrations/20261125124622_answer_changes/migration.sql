-- CreateTable
CREATE TABLE "AnswerChange" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "fittingId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "field" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,
    "overrode" JSONB,
    "settledAt" DATETIME,
    "deviceId" TEXT NOT NULL,
    "deviceName" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "typedAt" DATETIME,
    "requestKey" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "AnswerChange_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "AnswerChange_requestKey_key" ON "AnswerChange"("requestKey");

-- CreateIndex
CREATE INDEX "AnswerChange_fittingId_field_revision_idx" ON "AnswerChange"("fittingId", "field", "revision");
