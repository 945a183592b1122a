import { type BenchStage, compareAsBuilt } from "@/lib/build/as-built";
import type { Refusal } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import {
	type CheckContent,
	type CheckDecision,
	type DecidedCheck,
	densityOfBillet,
	openFindings,
} from "./check";
import { within } from "./checks";
import type { BuildContent } from "./job-content";
import type { JobState } from "./job-state";

/** States in which there is something on the bench to measure. */
export const MEASURED_IN: readonly JobState[] = [
	"on-the-bench",
	"waiting",
	"checked",
];

/** What a reading may be: wide enough for a blank, mm and g. This project's judgement. */
export const CHECK_LIMITS = {
	lengthMm: [300, 2200],
	massG: [100, 5000],
	balanceFromButtMm: [1, 2000],
	buttDiameterMm: [15, 80],
	tipDiameterMm: [6, 80],
	diameterMm: [6, 80],
	metalMassG: [0, 400],
} as const;

const { lengthMm, massG, balanceFromButtMm, buttDiameterMm, tipDiameterMm } =
	CHECK_LIMITS;
const FIGURE_LIMITS = {
	lengthMm,
	massG,
	balanceFromButtMm,
	buttDiameterMm,
	tipDiameterMm,
	metalMassG: CHECK_LIMITS.metalMassG,
} as const;

/**
 * Why a check cannot be written: "not-on-the-bench", "nothing-read", a reading out of range,
 * "no-such-station", "wood-not-in-cue", and those of a billet's density.
 */
export function writeRefusals(p: {
	state: JobState;
	build: Pick<BuildContent, "targets" | "stations" | "design"> &
		Parameters<typeof compareAsBuilt>[0];
	stage: BenchStage;
	content: CheckContent;
}): readonly Refusal[] {
	const { state, build, content } = p;
	if (!MEASURED_IN.includes(state))
		return [{ code: "not-on-the-bench", field: "state", value: state }];
	const { figures, billets } = content;
	const stations = figures.stations ?? [];
	const read = Object.keys(FIGURE_LIMITS).filter(
		(name) => figures[name as keyof typeof FIGURE_LIMITS] !== undefined,
	) as (keyof typeof FIGURE_LIMITS)[];
	if (read.length + stations.length + billets.length === 0)
		return [{ code: "nothing-read", field: "figures", value: null }];
	const woods = woodsOf(build);
	return [
		...read.flatMap((name) =>
			within(name, figures[name] ?? Number.NaN, FIGURE_LIMITS[name]),
		),
		...stations.flatMap(({ diameterMm }) =>
			within("diameterMm", diameterMm, CHECK_LIMITS.diameterMm),
		),
		...compareAsBuilt(build, figures, p.stage).unplacedStationsMm.map(
			(stationMm) => ({
				code: "no-such-station",
				field: "stationMm",
				value: stationMm,
			}),
		),
		...billets.flatMap((billet) => {
			if (!woods.includes(billet.wood))
				return [{ code: "wood-not-in-cue", field: "wood", value: billet.wood }];
			const density = densityOfBillet(billet);
			return density.ok ? [] : density.refusals;
		}),
	];
}

/** The woods of a cue in the order they are picked: shaft, butt, decoration. */
export const woodsOf = ({
	design: { shaftWood, buttWood, splice },
}: Pick<BuildContent, "design">): readonly WoodId[] => [
	...new Set([shaftWood, buttWood, ...splice.cuts.map(({ wood }) => wood)]),
];

/**
 * Why something cannot be decided of a check: "note-missing" where it is accepted without a reason,
 * "nothing-to-decide" where none of its figures is open.
 */
export function decideRefusals(p: {
	build: Parameters<typeof openFindings>[0];
	/** Latest first. */
	checks: readonly DecidedCheck[];
	checkId: string;
	decision: CheckDecision;
	note: string;
}): readonly Refusal[] {
	const isOpen = openFindings(p.build, p.checks).some(
		({ check }) => check.id === p.checkId,
	);
	if (!isOpen)
		return [{ code: "nothing-to-decide", field: "checkId", value: null }];
	return p.decision === "accept" && p.note === ""
		? [{ code: "note-missing", field: "note", value: null }]
		: [];
}

/**
 * Why evidence cannot be counted again: "other-evidence-stands" where another check of the same cue
 * speaks for the wood by now.
 */
export const restoreRefusals = (p: {
	wood: WoodId;
	isOtherOfJob: boolean;
}): readonly Refusal[] =>
	p.isOtherOfJob
		? [{ code: "other-evidence-stands", field: "wood", value: p.wood }]
		: [];
