import {
	accept,
	type Caution,
	type Outcome,
	refuse,
} from "@/lib/numerics/outcome";
import { type Body, bodyFrom } from "@/lib/player/body";
import {
	ageYearsOn,
	type PercentileOfStature,
	staturePercentiles,
} from "@/lib/player/growth";
import { type GripCircle, gripCircleFrom } from "@/lib/player/hand";
import type { PlayerMeasures } from "@/lib/player/measures";
import { BODY_LENGTHS, type BodyLength } from "@/lib/player/populations";
import { type Band, band90, type Estimate } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import { type GrowthPlan, growthPlan } from "@/lib/stance/growth-plan";
import type { Pose } from "@/lib/stance/pose";
import { type PostureNotice, postureNotice } from "@/lib/stance/posture";
import {
	type CueReach,
	reachFrom,
	type StanceAnswers,
} from "@/lib/stance/reach";
import { adviseButt } from "./butt";
import { type GripPlace, gripZone } from "./grip-zone";

/** An estimate with its central 90 % band written out; `standing` and `sources` say where it is from. */
export type Banded = Estimate & { readonly band: Band };

type BandedIn<T> = {
	readonly [Key in keyof T]: T[Key] extends Estimate ? Banded : T[Key];
};

export interface FitAnswer {
	readonly body: BandedIn<Body>;
	readonly grip: BandedIn<GripCircle>;
	readonly reach: BandedIn<Omit<CueReach, "pose">>;
	/** Solved at contact; its uncertainty is the span's. */
	readonly pose: Pose & Pick<Estimate, "standing" | "sources">;
	/** The light ring along the grip zone of a cue that just closes, or of the one named. */
	readonly closure: {
		readonly lengthMm: number;
		readonly tipDiameterMm: number;
		readonly buttDiameterMm: number;
		readonly places: readonly BandedIn<GripPlace>[];
		readonly cautions: readonly Caution[];
	};
	readonly posture: PostureNotice;
	/** Null where it was not asked for. */
	readonly growth: {
		readonly ageYears: number;
		readonly percentiles: readonly PercentileOfStature[];
		readonly plan: GrowthPlan;
	} | null;
}

export interface FitQuestion {
	readonly player: PlayerMeasures;
	readonly stance: StanceAnswers;
	/** The cue the closure is asked for; what is left out follows from the rest. */
	readonly cue?: {
		readonly lengthMm?: number;
		readonly tipDiameterMm?: number;
		readonly buttDiameterMm?: number;
	};
	/** Asks for a junior's outlook, from that ISO date. */
	readonly growth?: { readonly onDate: string; readonly bornOn?: string };
}

const ADULT_YEARS = 18;

const banded = (estimate: Estimate): Banded => ({
	...estimate,
	band: band90(estimate),
});

/** Segments, ring, length window, pose, closure, holding times and, where asked, growth of one player. */
export function answerFit(question: FitQuestion): Outcome<FitAnswer> {
	const { player, stance } = question;
	const solved = bodyFrom(player);
	if (!solved.ok) return solved;
	const body = solved.value;
	const ring = gripCircleFrom({
		readingsMm: player.gripCircleReadingsMm ?? [],
		handLengthMm: body.handLengthMm,
	});
	if (!ring.ok) return ring;
	const grip = ring.value;
	const reached = reachFrom({ body, answers: stance });
	if (!reached.ok) return reached;
	const { pose, ...reach } = reached.value;
	const growth = growthFor(question, {
		lengthMm: reach.lengthMm.value,
		circleMm: grip.circleMm,
	});
	if (!growth.ok) return growth;
	return accept({
		body: {
			...body,
			...(Object.fromEntries(
				BODY_LENGTHS.map((name) => [name, banded(body[name])]),
			) as Record<BodyLength, Banded>),
		},
		grip: { ...grip, circleMm: banded(grip.circleMm) },
		reach: {
			...reach,
			bridgeToGripMm: banded(reach.bridgeToGripMm),
			bridgeLengthMm: banded(reach.bridgeLengthMm),
			gripFromButtMm: banded(reach.gripFromButtMm),
			lengthMm: banded(reach.lengthMm),
			predictedSpanMm: banded(reach.predictedSpanMm),
		},
		pose: {
			...pose,
			standing: "derived",
			sources: [
				...new Set([
					...reach.predictedSpanMm.sources,
					...reach.bridgeToGripMm.sources,
				]),
			],
		},
		closure: closureFor(question, { grip, reach }),
		posture: postureNotice({
			anglesDeg: pose.anglesDeg,
			junior:
				(player.ageYears ?? ADULT_YEARS) < ADULT_YEARS || body.isChildModel,
		}),
		growth: growth.value,
	});
}

function closureFor(
	{ player, stance, cue = {} }: FitQuestion,
	{ grip, reach }: { grip: GripCircle; reach: Omit<CueReach, "pose"> },
): FitAnswer["closure"] {
	const [thin, thick] = GAMES[stance.gameId].usual.tipMm;
	const lengthMm = cue.lengthMm ?? reach.lengthMm.value;
	const tipDiameterMm = cue.tipDiameterMm ?? (thin + thick) / 2;
	const gripFromButtMm = reach.gripFromButtMm.value;
	const butt = adviseButt({
		input: {
			player,
			stance,
			presentCue: {},
			wishes: { buttDiameterMm: cue.buttDiameterMm },
		},
		grip,
		lengthMm,
		gripFromButtMm,
		tipDiameterMm,
		taperShape: "even",
	});
	const buttDiameterMm = butt.figure.value;
	return {
		lengthMm,
		tipDiameterMm,
		buttDiameterMm,
		places: gripZone({
			grip,
			lengthMm,
			gripFromButtMm,
			tipDiameterMm,
			buttDiameterMm,
			taperShape: "even",
		}).map((place) => ({ ...place, closureMm: banded(place.closureMm) })),
		cautions: butt.cautions,
	};
}

function growthFor(
	{ player, stance, growth }: FitQuestion,
	cue: { lengthMm: number; circleMm: Estimate },
): Outcome<FitAnswer["growth"]> {
	if (growth === undefined) return accept(null);
	const { onDate, bornOn } = growth;
	const ageYears =
		bornOn === undefined ? player.ageYears : ageYearsOn({ bornOn, on: onDate });
	const { statureMm, sex } = player;
	if (ageYears === undefined || statureMm === undefined)
		return refuse({
			code: "missing",
			field: ageYears === undefined ? "player.ageYears" : "player.statureMm",
			value: null,
		});
	const percentiles = staturePercentiles({ ageYears, statureMm, sex });
	if (!percentiles.ok) return percentiles;
	const plan = growthPlan({
		measures: { ...player, ageYears },
		answers: stance,
		cueLengthMm: cue.lengthMm,
		circleMm: cue.circleMm,
		today: onDate,
	});
	return plan.ok
		? accept({ ageYears, percentiles: percentiles.value, plan: plan.value })
		: plan;
}
