-- CreateTable
CREATE TABLE "AnswerChange" (
    "id" TEXT NOT NULL,
    "fittingId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "field" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,
    "overrode" JSONB,
    "settledAt" TIMESTAMP(3),
    "deviceId" TEXT NOT NULL,
    "deviceName" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "typedAt" TIMESTAMP(3),
    "requestKey" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "AnswerChange_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "AnswerChange_requestKey_key" ON "AnswerChange"("requestKey");

-- CreateIndex
CREATE INDEX "AnswerChange_fittingId_field_revision_idx" ON "AnswerChange"("fittingId", "field", "revision");

-- AddForeignKey
ALTER TABLE "AnswerChange" ADD CONSTRAINT "AnswerChange_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting"("id") ON DELETE CASCADE ON UPDATE CASCADE;


