import type { NextRequest } from "next/server";
import { readerOfRequest } from "@/app/_ui/preferences/loaders";
import { readLimited } from "@/app/api/v1/_parts/read-limited";
import { freezeSpec } from "@/app/fittings/_parts/freeze-spec";
import type { AnswerChange } from "@/lib/forms/answer-changes";
import {
	type AnswerConflict,
	isFieldName,
	type StartRequest,
	type SyncAnswer,
	type SyncRequest,
	storedFittingSchema,
	syncRequestSchema,
} from "@/lib/forms/device-sync";
import {
	type ChangeRecord,
	keepChanges,
	openConflicts,
} from "@/lib/records/fittings/changes";
import { getFittingById, hasBegun } from "@/lib/records/fittings/loaders";
import { startFitting } from "@/lib/records/fittings/mutations";
import { getPlayer } from "@/lib/records/players/loaders";
import { createPlayer } from "@/lib/records/players/mutations";

/** Four hundred answers of the longest kind do not come to this. */
const MAX_BODY_BYTES = 1024 * 1024;

const problem = (status: number, title: string): Response =>
	Response.json(
		{ title, status },
		{ status, headers: { "content-type": "application/problem+json" } },
	);

/**
 * Takes in what a device has of one fitting and answers with the fitting as it stands. Everything in a
 * request carries its key: sent again it changes nothing. Not a server action, because a request may
 * lie on a device while the app is built anew, and an action's address is a build's own.
 */
export async function POST(request: NextRequest): Promise<Response> {
	const receivedAt = new Date();
	// Another site's page may not write here; such a content type is not sent without asking first.
	const site = request.headers.get("sec-fetch-site");
	if (site !== null && site !== "same-origin")
		return problem(403, "Requests of other sites are not taken");
	if (!request.headers.get("content-type")?.startsWith("application/json"))
		return problem(400, "The request is not JSON");
	const text = await readLimited(request, MAX_BODY_BYTES);
	if (text === null) return problem(413, "The request is too large");
	const parsed = syncRequestSchema.safeParse(jsonOf(text));
	if (!parsed.success) return problem(400, parsed.error.message);
	const answer = await answerTo(parsed.data, { request, receivedAt });
	return Response.json(answer, { headers: { "cache-control": "no-store" } });
}

function jsonOf(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch (error) {
		if (error instanceof SyntaxError) return undefined;
		throw error;
	}
}

async function answerTo(
	{ device, sentAt, fittingId, start, changes, save }: SyncRequest,
	{ request, receivedAt }: { request: NextRequest; receivedAt: Date },
): Promise<SyncAnswer> {
	if (start !== undefined && !(await begin(fittingId, start)))
		return { status: "gone" };
	const known = changes.flatMap((change): AnswerChange[] =>
		isFieldName(change.field) ? [{ ...change, field: change.field }] : [],
	);
	const isThere = await keepChanges({
		fittingId,
		device,
		changes: known,
		sentAt,
		receivedAt,
	});
	if (!isThere) return { status: "gone" };
	const before = save && (await getFittingById(fittingId));
	const saved =
		save && before
			? await freezeSpec(before, save, await readerOfRequest(request))
			: null;
	const fitting = await getFittingById(fittingId);
	if (fitting === null) return { status: "gone" };
	return {
		status: "kept",
		fitting: storedFittingSchema.parse({
			...fitting,
			specNumber: fitting.spec?.number ?? null,
		}),
		conflicts: (await openConflicts(fittingId)).flatMap(conflictOf),
		refused: changes
			.filter(({ field }) => !isFieldName(field))
			.map(({ key }) => key),
		saved,
	};
}

/** False where the fitting was begun before and is gone, or its player is not in the records. */
async function begin(
	fittingId: string,
	{ requestKey, player, basedOnFittingId }: StartRequest,
): Promise<boolean> {
	if ((await getFittingById(fittingId)) !== null) return true;
	if (await hasBegun(requestKey)) return false;
	if (player.kind === "known" && (await getPlayer(player.id)) === null)
		return false;
	const playerId =
		player.kind === "known"
			? player.id
			: (
					await createPlayer({
						id: player.id,
						name: player.name,
						requestKey: `player-${requestKey}`,
					})
				).id;
	await startFitting({
		id: fittingId,
		playerId,
		requestKey,
		basedOnFittingId,
	});
	return true;
}

const conflictOf = ({
	id,
	field,
	after,
	overrode,
	...from
}: ChangeRecord): AnswerConflict[] =>
	overrode === null || !isFieldName(field)
		? []
		: [
				{
					id,
					field,
					came: {
						answer: copied(after),
						from: {
							deviceId: from.deviceId,
							deviceName: from.deviceName,
							by: from.by,
							at: from.at.toISOString(),
						},
					},
					stood: overrode,
				},
			];

const copied = (answer: ChangeRecord["after"]) =>
	answer === null || typeof answer === "string" ? answer : [...answer];
