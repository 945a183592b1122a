import type { Reader } from "@/lib/words/reader";

/** Whole years between an ISO birth date and a day. */
export function ageYears(birthDate: string, on: Date): number {
	const [year = 0, month = 1, day = 1] = birthDate.split("-").map(Number);
	const hadBirthday =
		on.getUTCMonth() + 1 > month ||
		(on.getUTCMonth() + 1 === month && on.getUTCDate() >= day);
	return on.getUTCFullYear() - year - (hadBirthday ? 0 : 1);
}

export const ageWords = (
	birthDate: string,
	on: Date,
	{ say }: Reader,
): string => say("players.age", { years: String(ageYears(birthDate, on)) });
