import { buildFiles, buildId } from "./build";

export const dynamic = "force-dynamic";

/**
 * The worker's first lines: which build it is of. They differ from build to build, which is how a
 * browser learns that there is a new one. What it does stands in public/offline.js.
 */
export function GET(): Response {
	const build = buildId();
	if (build === null)
		return new Response("There is no worker while developing.", {
			status: 404,
		});
	const lines = [
		`self.BUILD = ${JSON.stringify(build)};`,
		`self.FILES = ${JSON.stringify(buildFiles())};`,
		`importScripts("/offline.js?build=${encodeURIComponent(build)}");`,
	];
	return new Response(`${lines.join("\n")}\n`, {
		headers: {
			"content-type": "text/javascript; charset=utf-8",
			"cache-control": "no-cache",
		},
	});
}
