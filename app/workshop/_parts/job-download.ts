import "server-only";
import type { NextRequest } from "next/server";
import type { z } from "zod";
import {
	answer,
	type Download,
	NO_HOST,
	NOT_FOUND,
	problem,
	queryOf,
} from "@/app/specs/_parts/download";
import { publicAddress } from "@/app/specs/_parts/public-address";
import { invalidRequest } from "@/lib/forms/problem-details";
import {
	benchRevision,
	type JobRecord,
	type JobRevisionRecord,
} from "@/lib/records/jobs/data";
import { getJob } from "@/lib/records/jobs/loaders";
import { type JobParams, WHOLE } from "./loaders";

/** A route that answers with one file of what the bench builds by, as `specDownload` does for a spec. */
export function jobDownload<Query extends z.ZodType>(
	querySchema: Query,
	make: (p: {
		job: JobRecord;
		/** What the bench builds by. */
		revision: JobRevisionRecord;
		query: z.output<Query>;
		origin: string;
		request: NextRequest;
	}) => Download | Promise<Download>,
): (request: NextRequest, context: JobParams) => Promise<Response> {
	return async (request, { params }) => {
		const given = queryOf(request.nextUrl.searchParams);
		const query = querySchema.safeParse(given);
		if (!query.success)
			return problem(invalidRequest(query.error.issues, given));
		const origin = await publicAddress(request.headers);
		if (origin === null) return problem(NO_HOST);
		const { number } = await params;
		const job = WHOLE.test(number) ? await getJob(Number(number)) : null;
		if (job === null)
			return problem({
				...NOT_FOUND,
				title: "There is no such job",
				detail: "No job has this number.",
			});
		return answer(
			request,
			await make({
				job,
				revision: benchRevision(job),
				query: query.data,
				origin,
				request,
			}),
		);
	};
}
