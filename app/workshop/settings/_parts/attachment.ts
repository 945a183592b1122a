import "server-only";

/** An answer that is kept as a file, written anew each time. */
export const attachment = (p: {
	body: string;
	type: string;
	fileName: string;
}): Response =>
	new Response(p.body, {
		headers: {
			"content-type": p.type,
			"content-disposition": `attachment; filename="${p.fileName}"`,
			"cache-control": "private, no-store",
		},
	});
