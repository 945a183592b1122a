import "server-only";
import type { Prisma, TrialCue } from "@/generated/prisma/client";
import {
	type RackCueFields,
	rackCueFieldsSchema,
	type TrialPlan,
	trialPlanSchema,
} from "@/lib/forms/trial";
import type { Letter } from "@/lib/trial/order";
import type { ShotLine, ShotPosition } from "@/lib/trial/shots";

export interface RackCueRecord extends RackCueFields {
	readonly id: string;
	readonly isDemo: boolean;
	readonly retiredAt: Date | null;
	readonly revision: number;
}

export const toRackCue = (row: TrialCue): RackCueRecord => ({
	...rackCueFieldsSchema.parse({
		name: row.name,
		lengthMm: row.lengthMm,
		massG: row.massG,
		buttDiameterMm: row.buttDiameterMm,
		tipDiameterMm: row.tipDiameterMm,
		balanceFromButtMm: row.balanceFromButtMm,
		notes: row.notes,
	}),
	id: row.id,
	isDemo: row.isDemo,
	retiredAt: row.retiredAt,
	revision: row.revision,
});

/** A shot that stands. */
export interface ShotRecord {
	readonly requestKey: string;
	/** Place in the order of shots, from 0. */
	readonly shotNumber: number;
	readonly letter: Letter;
	readonly isPotted: boolean;
	readonly line?: ShotLine;
	readonly position?: ShotPosition;
}

/** A wish set from a trial; it stands until it is taken back. */
export interface TrialWishRecord {
	readonly id: string;
	readonly fitting: { readonly id: string; readonly number: number };
	readonly field: string;
	readonly before: string | null;
	readonly after: string;
	readonly appliedAt: Date;
	readonly revertedAt: Date | null;
}

export interface TrialSummary {
	readonly number: number;
	readonly player: { readonly id: string; readonly name: string };
	readonly isDemo: boolean;
	readonly plan: TrialPlan;
	readonly shotCount: number;
	readonly createdAt: Date;
	readonly endedAt: Date | null;
}

export interface TrialRecord extends TrialSummary {
	readonly id: string;
	/** In the order they were played. */
	readonly shots: readonly ShotRecord[];
	readonly wishes: readonly TrialWishRecord[];
}

export const standing = { undoneAt: null } as const;

export const trialSummarySelection = {
	number: true,
	isDemo: true,
	plan: true,
	createdAt: true,
	endedAt: true,
	player: { select: { id: true, name: true } },
	_count: { select: { shots: { where: standing } } },
} as const satisfies Prisma.TrialSelect;

export const shotSelection = {
	requestKey: true,
	shotNumber: true,
	letter: true,
	isPotted: true,
	line: true,
	position: true,
} as const satisfies Prisma.TrialShotSelect;

export const trialSelection = {
	...trialSummarySelection,
	id: true,
	shots: {
		select: shotSelection,
		where: standing,
		orderBy: { shotNumber: "asc" },
	},
	wishes: {
		select: {
			id: true,
			field: true,
			before: true,
			after: true,
			appliedAt: true,
			revertedAt: true,
			fitting: { select: { id: true, number: true } },
		},
		orderBy: { appliedAt: "asc" },
	},
} as const satisfies Prisma.TrialSelect;

type SummaryRow = Prisma.TrialGetPayload<{
	select: typeof trialSummarySelection;
}>;
type TrialRow = Prisma.TrialGetPayload<{ select: typeof trialSelection }>;
type ShotRow = Prisma.TrialShotGetPayload<{ select: typeof shotSelection }>;

export const toTrialSummary = ({
	_count,
	plan,
	...row
}: SummaryRow): TrialSummary => ({
	...row,
	plan: trialPlanSchema.parse(plan),
	shotCount: _count.shots,
});

/** The database holds what the actions let through; only the missing answers change their form. */
export const toShot = ({
	line,
	position,
	letter,
	...row
}: ShotRow): ShotRecord => ({
	...row,
	letter: letter as Letter,
	...(line === null ? {} : { line: line as ShotLine }),
	...(position === null ? {} : { position: position as ShotPosition }),
});

export const toTrial = ({
	id,
	shots,
	wishes,
	...row
}: TrialRow): TrialRecord => ({
	...toTrialSummary(row),
	id,
	shots: shots.map(toShot),
	wishes,
});
