import { settingsJsonSchema } from "@/lib/documents/settings-files";

export const dynamic = "force-static";

export const GET = (): Response =>
	Response.json(settingsJsonSchema(), {
		headers: {
			"content-type": "application/schema+json",
			"cache-control": "public, max-age=3600",
		},
	});
