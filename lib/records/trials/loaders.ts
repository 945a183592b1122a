import "server-only";
import { database } from "@/lib/records/database";
import {
	cursorAt,
	type ListRequest,
	readCursor,
	rowsWanted,
} from "@/lib/records/page";
import { nameContains } from "@/lib/records/search";
import {
	type RackCueRecord,
	type TrialRecord,
	type TrialSummary,
	toRackCue,
	toTrial,
	toTrialSummary,
	trialSelection,
	trialSummarySelection,
} from "@/lib/records/trials/data";

/** Every cue of the rack in the order of the names, those taken off it too. */
export async function listRack(): Promise<RackCueRecord[]> {
	const rows = await database().trialCue.findMany({
		orderBy: [{ name: "asc" }, { id: "asc" }],
	});
	return rows.map(toRackCue);
}

export async function getRackCue(id: string): Promise<RackCueRecord | null> {
	const row = await database().trialCue.findUnique({ where: { id } });
	return row && toRackCue(row);
}

export async function getTrial(number: number): Promise<TrialRecord | null> {
	const row = await database().trial.findUnique({
		where: { number },
		select: trialSelection,
	});
	return row && toTrial(row);
}

/** Trials last begun first, of one player or by any parts of a name; `next` continues the list. */
export async function listTrials(
	request: ListRequest & { playerId?: string } = {},
): Promise<{ trials: TrialSummary[]; next: string | null }> {
	const limit = rowsWanted(request.limit);
	const after = request.after === undefined ? null : readCursor(request.after);
	const rows = await database().trial.findMany({
		where: {
			AND: [
				request.playerId === undefined ? {} : { playerId: request.playerId },
				request.search ? { player: nameContains(request.search) } : {},
				after === null ? {} : { number: { lt: Number(after.value) } },
			],
		},
		orderBy: { number: "desc" },
		take: limit + 1,
		select: trialSummarySelection,
	});
	const page = rows.slice(0, limit);
	const last = page.at(-1);
	return {
		trials: page.map(toTrialSummary),
		next:
			last && rows.length > limit
				? cursorAt(String(last.number), String(last.number))
				: null,
	};
}

/** All trials of a player with their shots, first begun first. */
export async function trialsOf(playerId: string): Promise<TrialRecord[]> {
	const rows = await database().trial.findMany({
		where: { playerId },
		orderBy: { number: "asc" },
		select: trialSelection,
	});
	return rows.map(toTrial);
}
