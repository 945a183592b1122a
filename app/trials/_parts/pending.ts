import {
	type ShotChange,
	shotChangesSchema,
	type TrialPlan,
} from "@/lib/forms/trial";
import { type Letter, slotAt } from "@/lib/trial/order";
import type { ShotLine, ShotPosition } from "@/lib/trial/shots";

/** A shot as the page shows it, acknowledged or not. */
export interface LoggedShot {
	readonly requestKey: string;
	readonly shotNumber: number;
	readonly letter: Letter;
	readonly isPotted: boolean;
	readonly line?: ShotLine;
	readonly position?: ShotPosition;
}

/** What the server had, and this device's changes on top of it: the same rules as on the server. */
export function withChanges(
	acknowledged: readonly LoggedShot[],
	changes: readonly ShotChange[],
	plan: TrialPlan,
): LoggedShot[] {
	const shots = [...acknowledged];
	const takenBack = new Set<string>();
	for (const change of changes) {
		const at = shots.findIndex(
			({ requestKey }) => requestKey === change.requestKey,
		);
		if (change.kind === "take-back") {
			takenBack.add(change.requestKey);
			if (at >= 0 && at === shots.length - 1) shots.pop();
			continue;
		}
		const { requestKey, shotNumber, isPotted, line, position } = change;
		const known = shots[at];
		if (known !== undefined) {
			shots[at] = { ...known, line, position };
			continue;
		}
		const slot = slotAt(plan, shotNumber);
		if (
			slot === null ||
			shotNumber !== shots.length ||
			takenBack.has(requestKey)
		)
			continue;
		shots.push({
			requestKey,
			shotNumber,
			letter: slot.letter,
			isPotted,
			line,
			position,
		});
	}
	return shots;
}

const keyOf = (trialId: string) => `trial-shots:${trialId}`;

/** Changes not yet acknowledged, kept on the device; `damaged` where something is there that cannot be read. */
export function readPending(
	trialId: string,
): readonly ShotChange[] | "damaged" {
	const text = localStorage.getItem(keyOf(trialId));
	if (text === null) return [];
	try {
		const parsed = shotChangesSchema.safeParse(JSON.parse(text));
		return parsed.success ? parsed.data : "damaged";
	} catch {
		return "damaged";
	}
}

/** False when the device refuses to keep them: full, or storage switched off. */
export function keepPending(
	trialId: string,
	changes: readonly ShotChange[],
): boolean {
	try {
		if (changes.length === 0) localStorage.removeItem(keyOf(trialId));
		else localStorage.setItem(keyOf(trialId), JSON.stringify(changes));
		return true;
	} catch {
		return false;
	}
}
