import { jobJsonSchema } from "@/lib/documents/job-schema";

export const dynamic = "force-static";

export const GET = (): Response =>
	Response.json(jobJsonSchema(), {
		headers: {
			"content-type": "application/schema+json",
			"cache-control": "public, max-age=3600",
		},
	});
