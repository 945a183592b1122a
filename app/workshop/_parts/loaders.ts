import "server-only";
import { notFound } from "next/navigation";
import type { JobRecord } from "@/lib/records/jobs/data";
import { getJob } from "@/lib/records/jobs/loaders";

export interface JobParams {
	readonly params: Promise<{ number: string }>;
}

export const WHOLE = /^[1-9]\d{0,8}$/;

/** The job an address names, or the not-found page. */
export async function jobOf({ params }: JobParams): Promise<JobRecord> {
	const { number } = await params;
	if (!WHOLE.test(number)) notFound();
	const job = await getJob(Number(number));
	if (job === null) notFound();
	return job;
}
