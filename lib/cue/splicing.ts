import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import type {
	CueRequest,
	FlatRequest,
	PlaneCut,
	SplicingRequest,
	Veneer,
} from "./design";
import { type Flat, flatFrom, PLANING, type Round } from "./flat";

/** The flats of a hand splice and of any decoration, in glue order. */
export function cutsFor(
	request: CueRequest,
	round: Round,
): Outcome<readonly PlaneCut[]> {
	const { splicing = {}, splice } = request;
	const hand = splice === "hand-four-point";
	for (const field of ["points", "pointsBetween"] as const)
		if (splicing[field] && !hand)
			return refuse({
				code: "hand-splice-only",
				field: `splicing.${field}`,
				value: splice,
			});
	const refusal = countRefusal(splicing);
	if (refusal) return refuse(refusal);
	const cuts: PlaneCut[] = [];
	for (const plan of [
		...(hand ? pointPlans(request, round) : []),
		...decorationPlans(splicing, round),
	]) {
		const made = cutsOf(plan, round);
		if (!made.ok) return made;
		cuts.push(...made.value);
	}
	return accept(cuts);
}

function countRefusal({ allRound }: SplicingRequest) {
	if (!allRound) return null;
	const { min, max } = PLANING.allRoundCount;
	const field = "splicing.allRound.count";
	const { count } = allRound;
	if (Number.isFinite(count) && !Number.isInteger(count))
		return { code: "not-whole", field, value: count, min, max };
	return outside(field, count, min, max);
}

interface Plan {
	readonly field: string;
	readonly flat: FlatRequest;
	readonly usual: { pointFromButtMm: number; coreHalfWidthMm: number };
	readonly wood: WoodId;
	/** Flats planed and glued together. */
	readonly steps: readonly {
		readonly part: string;
		readonly facesDeg: readonly number[];
	}[];
}

/** The hand splice: two pairs across each other, and two more between them for eight points. */
function pointPlans(request: CueRequest, round: Round): readonly Plan[] {
	const { points = {}, pointsBetween } = request.splicing ?? {};
	const usual = {
		pointFromButtMm: Math.min(
			PLANING.pointMaxMm,
			PLANING.pointShare * round.lengthMm,
		),
		coreHalfWidthMm: PLANING.coreShare * round.radiusAt(round.lengthMm),
	};
	const first: Plan = {
		field: "splicing.points",
		flat: points,
		usual,
		wood: request.buttWood,
		steps: [
			{ part: "first splice pair", facesDeg: [0, 180] },
			{ part: "second splice pair", facesDeg: [90, 270] },
		],
	};
	if (!pointsBetween) return [first];
	return [
		first,
		{
			field: "splicing.pointsBetween",
			flat: pointsBetween,
			usual: {
				pointFromButtMm: PLANING.betweenPointShare * usual.pointFromButtMm,
				coreHalfWidthMm: PLANING.betweenCoreShare * usual.coreHalfWidthMm,
			},
			wood: pointsBetween.wood,
			steps: [
				{ part: "third splice pair", facesDeg: [45, 225] },
				{ part: "fourth splice pair", facesDeg: [135, 315] },
			],
		},
	];
}

function decorationPlans(
	{ allRound, frontWedge }: SplicingRequest,
	round: Round,
): readonly Plan[] {
	const usual = {
		pointFromButtMm: PLANING.decorationShare * round.lengthMm,
		coreHalfWidthMm:
			PLANING.decorationCoreShare * round.radiusAt(round.lengthMm),
	};
	const plans: Plan[] = [];
	if (allRound) {
		const { count, wood, faceAngleDeg = 180 / count } = allRound;
		const facesDeg = Array.from(
			{ length: count },
			(_, i) => faceAngleDeg + (360 * i) / count,
		);
		plans.push({
			field: "splicing.allRound",
			flat: allRound,
			usual,
			wood,
			steps: [{ part: "all-round wedges", facesDeg }],
		});
	}
	if (frontWedge)
		plans.push({
			field: "splicing.frontWedge",
			flat: frontWedge,
			usual,
			wood: frontWedge.wood,
			steps: [
				{ part: "front wedge", facesDeg: [frontWedge.faceAngleDeg ?? 0] },
			],
		});
	return plans;
}

function cutsOf(plan: Plan, round: Round): Outcome<readonly PlaneCut[]> {
	const flat = flatFrom({
		round,
		request: plan.flat,
		usual: plan.usual,
		field: plan.field,
	});
	if (!flat.ok) return flat;
	const veneers = plan.flat.veneers ?? [];
	const refusals = [
		outside(`${plan.field}.veneers`, veneers.length, 0, PLANING.maxVeneers),
		...veneers.map((veneer, i) =>
			outside(
				`${plan.field}.veneers.${i}.thicknessMm`,
				veneer.thicknessMm,
				PLANING.veneerMm.min,
				PLANING.veneerMm.max,
			),
		),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	return accept(
		plan.steps.flatMap(({ part, facesDeg }) =>
			sheetsOn(flat.value, veneers, { part, wood: plan.wood }).flatMap(
				(sheet) => facesDeg.map((faceAngleDeg) => ({ ...sheet, faceAngleDeg })),
			),
		),
	);
}

/** Veneers and then the wedge, each from its own parallel plane. */
function sheetsOn(
	flat: Flat,
	veneers: readonly Veneer[],
	wedge: { part: string; wood: WoodId },
): readonly Omit<PlaneCut, "faceAngleDeg">[] {
	const lean = Math.cos((flat.planeAngleDeg * Math.PI) / 180);
	let buttOffsetMm = flat.coreHalfWidthMm;
	const sheets: Omit<PlaneCut, "faceAngleDeg">[] = [];
	for (const { wood, thicknessMm } of veneers) {
		sheets.push({
			part: `${wedge.part} veneer`,
			wood,
			buttOffsetMm,
			angleDeg: flat.planeAngleDeg,
		});
		buttOffsetMm += thicknessMm / lean;
	}
	sheets.push({ ...wedge, buttOffsetMm, angleDeg: flat.planeAngleDeg });
	return sheets;
}
