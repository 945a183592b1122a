import { specJsonSchema } from "@/lib/documents/spec-schema";

export const dynamic = "force-static";

export const GET = (): Response =>
	Response.json(specJsonSchema(), {
		headers: {
			"content-type": "application/schema+json",
			"cache-control": "public, max-age=3600",
		},
	});
