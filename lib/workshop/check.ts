import {
	type AsBuiltReadings,
	type BenchStage,
	type BuildToHold,
	compareAsBuilt,
	type Finding,
} from "@/lib/build/as-built";
import { billetDensity } from "@/lib/build/billet";
import type { BilletDensities, BilletDensity } from "@/lib/cue/design";
import { REFERENCE_MOISTURE_PCT } from "@/lib/cue/moisture";
import { accept, type Outcome, type Refusal } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import type { JobState } from "./job-state";
import type { Prediction } from "./weighed-cue";

/** A billet as it was weighed before the saw, one of each wood. */
export interface CheckBillet {
	readonly wood: WoodId;
	readonly massG: number;
	readonly lengthMm: number;
	readonly widthMm: number;
	readonly thicknessMm: number;
	/** By a meter; null where none was held to it. */
	readonly moisturePct: number | null;
}

export interface CheckFigures extends AsBuiltReadings {
	/** Metal that was really put in. */
	readonly metalMassG?: number;
}

/** What one check read. Plain JSON. */
export interface CheckContent {
	readonly schemaVersion: 1;
	readonly figures: CheckFigures;
	readonly billets: readonly CheckBillet[];
	/** The same as it was typed, by the field's name. */
	readonly typed: Readonly<Record<string, string>>;
	readonly note: string;
	/** What weight and balance were predicted when the cue was ordered; null where the readings tell neither. */
	readonly predicted: Prediction | null;
}

/** Of a meter, and of a billet that was only kept in the workshop's air. This project's judgement. */
const MOISTURE_SD_PCT = { metered: 1, unmetered: 1.5 } as const;

/** Density at 12 % of a weighed billet. Refusals: see billetDensity. */
export const densityOfBillet = ({
	moisturePct,
	...billet
}: CheckBillet): Outcome<BilletDensity> =>
	billetDensity({
		...billet,
		moisturePct: {
			value: moisturePct ?? REFERENCE_MOISTURE_PCT,
			sd:
				moisturePct === null
					? MOISTURE_SD_PCT.unmetered
					: MOISTURE_SD_PCT.metered,
		},
	});

/**
 * What somebody at the bench can decide of a cue out of tolerance. `accept`: it goes as it is, and the
 * note says why. `rework`: it is put right and measured again. `tell-customer`: the customer is asked to
 * agree to what it came to, by a new revision.
 */
export const CHECK_DECISIONS = ["accept", "rework", "tell-customer"] as const;
export type CheckDecision = (typeof CHECK_DECISIONS)[number];

/** A check with what was last decided of it; null where nothing was. */
export interface DecidedCheck {
	readonly id: string;
	readonly stage: BenchStage;
	readonly content: CheckContent;
	readonly decision: CheckDecision | null;
}

export interface OpenFinding extends Finding {
	readonly check: DecidedCheck;
}

/**
 * The figures that stand out of tolerance: of each figure the latest reading that was compared with
 * anything counts, whichever check it is of, so that a slip is put right by measuring again. Checks
 * come latest first. Accepted ones are no longer open.
 */
export function openFindings(
	build: BuildToHold,
	checks: readonly DecidedCheck[],
): readonly OpenFinding[] {
	const seen = new Set<string>();
	return checks.flatMap((check) =>
		compareAsBuilt(build, check.content.figures, check.stage).findings.flatMap(
			(finding) => {
				const key = `${finding.figure} ${finding.stationMm ?? ""}`;
				if (seen.has(key)) return [];
				seen.add(key);
				return finding.isOut && check.decision !== "accept"
					? [{ ...finding, check }]
					: [];
			},
		),
	);
}

/** States a cue reaches only with every figure within tolerance or decided on. */
export const NEEDS_CHECK: readonly JobState[] = ["checked", "handed-over"];

/**
 * Why a job cannot be moved on for what the bench measured: "check-undecided", "rework-not-measured"
 * until the figure is measured again, "customer-not-told" until a revision says what it came to.
 */
export function checkRefusals(p: {
	to: JobState;
	build: BuildToHold;
	/** Latest first. */
	checks: readonly DecidedCheck[];
}): readonly Refusal[] {
	const { to } = p;
	if (!NEEDS_CHECK.includes(to)) return [];
	const open = openFindings(p.build, p.checks);
	const figuresAt = (decision: CheckDecision | null) =>
		open.filter(({ check }) => check.decision === decision).length;
	const held = (refusal: Refusal): readonly Refusal[] =>
		refusal.facts?.figures === 0 ? [] : [refusal];
	return [
		...held({
			code: "check-undecided",
			field: "to",
			value: to,
			facts: { figures: figuresAt(null) },
		}),
		...held({
			code: "rework-not-measured",
			field: "to",
			value: to,
			facts: { figures: figuresAt("rework") },
		}),
		...held({
			code: "customer-not-told",
			field: "to",
			value: to,
			facts: { figures: figuresAt("tell-customer") },
		}),
	];
}

/** Densities of the billets of a cue: of each wood the last that was weighed. Checks come latest first. */
export function billetsOf(
	checks: readonly Pick<DecidedCheck, "content">[],
): Outcome<BilletDensities> {
	const densities: Partial<Record<WoodId, BilletDensity>> = {};
	for (const { content } of checks)
		for (const billet of content.billets) {
			if (densities[billet.wood] !== undefined) continue;
			const density = densityOfBillet(billet);
			if (!density.ok) return density;
			densities[billet.wood] = density.value;
		}
	return accept(densities);
}

/** What was read last of a figure on the cue as it is handed over. Checks come latest first. */
export function finishedFigures(
	checks: readonly Pick<DecidedCheck, "stage" | "content">[],
): CheckFigures {
	const finished = checks.filter(({ stage }) => stage === "finished");
	const stations = new Map<number, number>();
	let figures: CheckFigures = {};
	for (const { content } of [...finished].reverse()) {
		figures = { ...figures, ...content.figures };
		for (const { stationMm, diameterMm } of content.figures.stations ?? [])
			stations.set(stationMm, diameterMm);
	}
	return {
		...figures,
		stations: [...stations].map(([stationMm, diameterMm]) => ({
			stationMm,
			diameterMm,
		})),
	};
}
