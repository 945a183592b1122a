import "server-only";
import { randomBytes } from "node:crypto";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";

/** 256 bits from the system's generator. */
const newSecret = (): string => randomBytes(32).toString("base64url");

/** A secret of this installation by its name, drawn where it is asked for first. */
export const secretNamed = (name: string): Promise<string> =>
	inTransaction((transaction) => secretIn(transaction, name));

async function secretIn(
	transaction: DatabaseTransaction,
	name: string,
): Promise<string> {
	const known = await transaction.serverSecret.findUnique({ where: { name } });
	if (known !== null) return known.value;
	const value = newSecret();
	await transaction.serverSecret.create({ data: { name, value } });
	return value;
}

const SALT = "rate-salt ";
const SALT_KEPT_MS = 2 * 86_400_000;

/** The salt of a day, new each day; those of days gone by are deleted, and with them what could tell an address. */
export async function saltOfDay(
	transaction: DatabaseTransaction,
	now: Date,
): Promise<string> {
	const name = SALT + now.toISOString().slice(0, 10);
	const known = await transaction.serverSecret.findUnique({ where: { name } });
	if (known !== null) return known.value;
	await transaction.serverSecret.deleteMany({
		where: {
			name: { startsWith: SALT },
			createdAt: { lt: new Date(now.getTime() - SALT_KEPT_MS) },
		},
	});
	const value = newSecret();
	await transaction.serverSecret.create({
		data: { name, value, createdAt: now },
	});
	return value;
}
