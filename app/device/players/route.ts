import type { KnownPlayers } from "@/app/_device/records";
import { knownPlayers } from "@/app/coaching/_parts/loaders";

export const dynamic = "force-dynamic";

/** The players seen last, for a device to start with where the server does not answer. */
export async function GET(): Promise<Response> {
	const players: KnownPlayers["players"] = await knownPlayers();
	return Response.json(
		{ players },
		{ headers: { "cache-control": "private, no-store" } },
	);
}
