"use server";

import { redirect } from "next/navigation";
import { z } from "zod";
import { startFitting } from "@/lib/records/fittings/mutations";

/** An action is a public endpoint: whatever comes in is parsed, whoever the type says sent it. */
const refitSchema = z.strictObject({
	playerId: z.string().min(1).max(64),
	fittingId: z.string().min(1).max(64),
	requestKey: z.uuid(),
});

/** Begins a new fitting of the same player with this one's answers, and opens it. */
export async function refit(
	request: z.input<typeof refitSchema>,
): Promise<void> {
	const { playerId, fittingId, requestKey } = refitSchema.parse(request);
	const fitting = await startFitting({
		playerId,
		requestKey,
		basedOnFittingId: fittingId,
	});
	redirect(`/fittings/${fitting.number}/player`);
}
