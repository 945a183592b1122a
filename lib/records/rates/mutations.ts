import "server-only";
import { hashedPlace } from "@/lib/access/address";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import {
	COUNTS_KEPT_MS,
	RATE_LIMITS,
	type RatedAction,
	type RateLimit,
	type Turn,
	WINDOW_MS,
} from "@/lib/records/rates/data";
import { saltOfDay } from "@/lib/records/secrets/mutations";

/**
 * Counts one more of an action from a place, hour by hour. Where the place or everybody together had
 * their number already, nothing is counted and the turn is refused until the hour is over.
 */
export async function takeTurn({
	action,
	place,
	now = new Date(),
	limit = RATE_LIMITS[action],
}: {
	action: RatedAction;
	place: string;
	now?: Date;
	limit?: RateLimit;
}): Promise<Turn> {
	const windowStart = new Date(
		Math.floor(now.getTime() / WINDOW_MS) * WINDOW_MS,
	);
	return inTransaction(async (transaction): Promise<Turn> => {
		const salt = await saltOfDay(transaction, windowStart);
		const counted = [
			{ key: `${action} ${hashedPlace(place, salt)}`, most: limit.perPlace },
			{ key: `${action} all`, most: limit.inAll },
		];
		for (const { key, most } of counted) {
			const row = await transaction.rateCount.findUnique({
				where: { key_windowStart: { key, windowStart } },
			});
			if ((row?.count ?? 0) >= most)
				return {
					ok: false,
					tryAgainAt: new Date(windowStart.getTime() + WINDOW_MS),
				};
		}
		for (const { key } of counted)
			await transaction.rateCount.upsert({
				where: { key_windowStart: { key, windowStart } },
				create: { key, windowStart, count: 1 },
				update: { count: { increment: 1 } },
			});
		await transaction.rateCount.deleteMany({
			where: { windowStart: { lt: new Date(now.getTime() - COUNTS_KEPT_MS) } },
		});
		return { ok: true };
	});
}

/**
 * Marks a challenge as used, inside the transaction of what it was used for. False where it was used
 * before. Kept until a day after it expires: then it is refused as expired.
 */
export async function spendChallenge(
	transaction: DatabaseTransaction,
	{ id, expiresAtMs }: { readonly id: string; readonly expiresAtMs: number },
): Promise<boolean> {
	const at = { key: `used ${id}`, windowStart: new Date(expiresAtMs) };
	const before = await transaction.rateCount.findUnique({
		where: { key_windowStart: at },
	});
	if (before !== null) return false;
	await transaction.rateCount.create({ data: { ...at, count: 1 } });
	return true;
}
