"use server";

import { redirect } from "next/navigation";
import { z } from "zod";
import { startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";

const requestSchema = z.strictObject({
	player: z.discriminatedUnion("kind", [
		z.strictObject({
			kind: z.literal("entry"),
			id: z.string().min(1).max(64),
			label: z.string(),
		}),
		z.strictObject({
			kind: z.literal("new"),
			label: z.string().trim().min(1).max(120),
		}),
	]),
	requestKey: z.uuid(),
});

/** Creates the player where the name is new, starts the fitting, and goes to its first step. */
export async function begin(
	request: z.input<typeof requestSchema>,
): Promise<void> {
	const { player, requestKey } = requestSchema.parse(request);
	const playerId =
		player.kind === "entry"
			? player.id
			: (
					await createPlayer({
						name: player.label,
						requestKey: `player-${requestKey}`,
					})
				).id;
	const fitting = await startFitting({ playerId, requestKey });
	redirect(`/fittings/${fitting.number}/player`);
}
