import "server-only";
import { z } from "zod";
import type { Player } from "@/generated/prisma/client";

/** What is recorded of a player. The measures belong to a fitting, because they change. */
export const playerFieldsSchema = z.strictObject({
	name: z.string().trim().min(1).max(120),
	/** ISO date, "2014-05-30". */
	birthDate: z.iso.date().nullable(),
	sex: z.enum(["female", "male"]).nullable(),
	hand: z.enum(["right", "left"]).nullable(),
	notes: z.string().max(4000),
	/** ISO date the coach wants the player measured again; null leaves it to the growth tables. */
	remeasureOn: z.iso.date().nullable(),
});

export type PlayerFields = z.infer<typeof playerFieldsSchema>;

export interface PlayerRecord extends PlayerFields {
	readonly id: string;
	readonly isDemo: boolean;
	readonly revision: number;
	readonly createdAt: Date;
	readonly updatedAt: Date;
}

export const toPlayer = (row: Player): PlayerRecord => ({
	...playerFieldsSchema.parse({
		name: row.name,
		birthDate: row.birthDate,
		sex: row.sex,
		hand: row.hand,
		notes: row.notes,
		remeasureOn: row.remeasureOn,
	}),
	id: row.id,
	isDemo: row.isDemo,
	revision: row.revision,
	createdAt: row.createdAt,
	updatedAt: row.updatedAt,
});
