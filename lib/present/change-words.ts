import type { Influence } from "@/lib/advice/sensitivity";
import type { WoodId } from "@/lib/reference/woods";
import { WOODS } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import {
	formatLength,
	formatMass,
	formatNumber,
	formatPercent,
	type LengthKind,
} from "./figures";
import { inSentence } from "./labels";

/** What is to be done about an open answer, as the start of a sentence; null for an unknown name. */
const doing = (reader: Reader): Readonly<Record<string, string>> => ({
	"player.statureMm": `Measuring the height`,
	"player.armSpanMm": `Measuring the arm span`,
	"player.handLengthMm": `Measuring the hand length`,
	"player.shoulderToElbowMm": `Measuring shoulder to elbow`,
	"player.elbowToGripMm": `Measuring elbow to fist`,
	"player.shoulderBreadthMm": `Measuring the shoulder breadth`,
	"player.gripCircleReadingsMm": `Reading the grip circle three times more`,
	"stance.bridgeLengthMm": `Measuring the bridge length`,
	"stance.gripFromButtMm": `Measuring grip hand to butt end`,
	"stance.bridgeToGripMm": `Measuring bridge hand to grip hand`,
	"stance.stance": `Saying how feet and shoulders stand`,
	"stance.posture": `Saying how low the player goes over the cue`,
	"stance.bridgeArm": `Saying whether the bridge arm is straight or bent`,
	level: `Saying the playing level`,
	"presentCue.lengthMm": `Measuring the ${inSentence.field("presentLength", reader)}`,
	"presentCue.massG": `Weighing the present cue`,
	"presentCue.buttDiameterMm": `Measuring the ${inSentence.field("presentButt", reader)}`,
	"presentCue.tipDiameterMm": `Measuring the tip of the present cue`,
	"presentCue.balanceFromButtMm": `Finding the balance point of the present cue`,
});

const DENSITY = "density.";

/** An answer without words is named as it is, never hidden. */
export function doingText(answer: string, reader: Reader): string {
	const known = doing(reader)[answer];
	if (known !== undefined) return known;
	if (answer.startsWith(DENSITY)) {
		const wood = WOODS[answer.slice(DENSITY.length) as WoodId];
		if (wood !== undefined)
			return `Weighing the billet of ${wood.name.toLowerCase()}`;
	}
	return `Knowing ${answer}`;
}

export const hasDoing = (answer: string, reader: Reader): boolean =>
	!doingText(answer, reader).startsWith("Knowing ");

const MOVED = [
	["lengthMm", "the length", "gap", 0.5],
	["massG", "the weight", "mass", 0.5],
	["buttDiameterMm", "the butt", "bench", 0.05],
	["tipDiameterMm", "the tip", "bench", 0.02],
	["balanceMm", "the balance", "gap", 0.5],
] as const satisfies readonly (readonly [
	string,
	string,
	LengthKind | "mass",
	number,
])[];

export interface InfluenceView {
	readonly answer: string;
	readonly text: string;
	readonly steps: string;
}

/** Influences below this are not worth a sentence, in differences a player would notice. */
const WORTH_TELLING = 0.02;

/** One sentence an influence, strongest first, those that would move nothing left out. */
export function influenceViews(
	influences: readonly Influence[],
	reader: Reader,
): readonly InfluenceView[] {
	return influences
		.filter(
			(influence) =>
				influence.feltSteps >= WORTH_TELLING &&
				movedBy(influence, reader).length > 0,
		)
		.map((influence) => ({
			answer: influence.answer,
			text: influenceText(influence, reader),
			steps: formatNumber(influence.feltSteps, reader, 1),
		}));
}

function movedBy(
	{ needMovement, cueMovement }: Influence,
	reader: Reader,
): readonly string[] {
	const movement: Partial<Record<(typeof MOVED)[number][0], number>> =
		cueMovement ?? needMovement;
	return MOVED.flatMap(([name, label, kind, least]) => {
		const by = movement[name] ?? 0;
		if (by < least) return [];
		return `${label} by about ±${kind === "mass" ? formatMass(by, reader, "added") : formatLength(by, reader, kind)}`;
	});
}

export function influenceText(influence: Influence, reader: Reader): string {
	const { answer, worthGained } = influence;
	const moved = movedBy(influence, reader);
	const gained =
		worthGained !== null && worthGained >= 0.001
			? ` Ordering for the answer would be worth ${formatPercent(worthGained, reader, 1)} on average.`
			: "";
	const what = moved.length === 0 ? "nothing worth telling" : list(moved);
	return `${doingText(answer, reader)} would move ${what}.${gained}`;
}

const list = (parts: readonly string[]): string =>
	parts.length < 2
		? parts.join("")
		: `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;
