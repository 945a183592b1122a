import type { FittingInput } from "@/lib/advice/input";
import { BUTT_LIMITS_MM } from "@/lib/advice/judgement";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { band90, type Estimate } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import type { Shortfall } from "@/lib/stance/pose";
import { type Hold, postureNotice } from "@/lib/stance/posture";
import { overhangMm, reachFrom } from "@/lib/stance/reach";
import type { Reader } from "@/lib/words/reader";
import {
	formatAngle,
	formatLength,
	formatLengthBand,
	formatRatio,
} from "./figures";
import { basisLabel } from "./labels";
import { cautionText } from "./notices";
import {
	type Picture,
	type Posed,
	type PoseSubject,
	picturesOf,
} from "./pose-drawing";
import { rightHanded } from "./pose-mirror";
import type { Cue } from "./pose-props";

export interface PoseView {
	readonly pictures: readonly [side: Picture, above: Picture];
	/** The pose in a few sentences, for who does not see it. */
	readonly summary: string;
	readonly numbers: readonly {
		readonly label: string;
		readonly value: string;
		readonly origin: string;
	}[];
	/** What the pose cannot meet, with its numbers. */
	readonly shortfalls: readonly string[];
	readonly posture: {
		readonly holds: readonly string[];
		readonly cautions: readonly string[];
	};
}

/** Under this age the printed limits do not cover the player, years. */
const ADULT_YEARS = 18;

/** Everything the picture of a pose shows, in the reader's units. */
export function poseView(subject: PoseSubject, reader: Reader): PoseView {
	const { input, reach } = subject;
	const left = (input.stance.handed ?? input.hand) === "left";
	const pose = rightHanded(reach.pose, input.stance.handed === "left");
	const cue: Cue = {
		lengthMm: subject.length.value,
		bridgeLengthMm: reach.bridgeLengthMm.value,
		tipDiameterMm: subject.tip.value,
		buttDiameterMm: subject.butt.figure.value,
	};
	const behind = overhangMm({ reach, lengthMm: cue.lengthMm });
	const notice = postureNotice({
		anglesDeg: pose.anglesDeg,
		junior:
			(input.player.ageYears ?? ADULT_YEARS) < ADULT_YEARS ||
			subject.body.isChildModel,
	});
	const posed: Posed = { pose, cue, subject, behind, reader };
	return {
		pictures: picturesOf(posed, left),
		summary: summaryOf(posed, left),
		numbers: numbersOf(posed),
		shortfalls: pose.shortfalls.map((s) => shortfallText(s, reader)),
		posture: {
			holds: [
				holdText("Trunk from upright", notice.trunk, reader),
				holdText("Head from upright", notice.head, reader),
				`Neck: head ${formatAngle(Math.abs(notice.neckDeg), reader, 0)} ${notice.neckDeg < 0 ? "back from" : "forward of"} the trunk${notice.neckZone === "past-limit" ? ", past the limit for holding still" : ""}.`,
			],
			cautions: withoutRepeats(
				notice.cautions.map((caution) => cautionText(caution, reader)),
			),
		},
	};
}

/**
 * The pose of an input that no cue can be built for: drawn with the length the stance prefers and,
 * for the drawing alone, the game's usual tip and a middle butt.
 */
export function poseSubject(input: FittingInput): Outcome<PoseSubject> {
	const body = bodyFrom(input.player);
	if (!body.ok) return body;
	const reach = reachFrom({ body: body.value, answers: input.stance });
	if (!reach.ok) return reach;
	const { lengthMm } = reach.value;
	const [thin, thick] = GAMES[input.stance.gameId].usual.tipMm;
	return accept({
		input,
		body: body.value,
		reach: reach.value,
		length: { value: lengthMm.value, basis: lengthMm.standing },
		tip: { value: (thin + thick) / 2 },
		butt: { figure: { value: (BUTT_LIMITS_MM.min + BUTT_LIMITS_MM.max) / 2 } },
	});
}

function summaryOf(
	{ pose, cue, subject, behind, reader }: Posed,
	left: boolean,
): string {
	const { anglesDeg: a } = pose;
	const mm = (value: number) => formatLength(value, reader);
	const deg = (value: number) => formatAngle(value, reader, 0);
	const support = subject.input.stance.seated
		? "Seated"
		: subject.input.stance.standingFrame
			? "In a standing frame"
			: "Standing";
	return [
		`${support}, ${left ? "left" : "right"}-handed, at a cloth ${mm(pose.clothHeightMm)} above the floor.`,
		`The trunk leans ${deg(a.trunkInclination)} from upright, the chin is ${mm(pose.chinAboveCueMm)} above the cue, the forearm ${Math.abs(a.forearmTilt) < 0.5 ? "hangs upright" : `is ${deg(Math.abs(a.forearmTilt))} off the upright`} over the grip hand.`,
		`From bridge hand to grip hand ${mm(pose.spanMm)}, ${mm(cue.bridgeLengthMm)} of cue in front, ${behind.value < 0 ? `and a cue of ${mm(cue.lengthMm)} ends ${mm(-behind.value)} before the middle of the hand` : `${mm(behind.value)} behind: a cue of ${mm(cue.lengthMm)}`}.`,
		`From above, the shoulder line is ${deg(a.shoulderYaw)} to the shot and the bridge elbow bent to ${deg(a.bridgeElbow)}.`,
	].join(" ");
}

function numbersOf({
	pose,
	subject,
	cue,
	behind,
	reader,
}: Posed): PoseView["numbers"] {
	const { reach, input } = subject;
	const { anglesDeg: a } = pose;
	const estimated = (label: string, estimate: Estimate) => ({
		label,
		value: `${formatLength(estimate.value, reader)} (nine in ten: ${formatLengthBand(band90(estimate), reader)})`,
		origin: basisLabel(estimate.standing, reader),
	});
	// A measured span bends every style figure to itself, whatever was said.
	const fitted =
		reach.bridgeToGripMm.standing === "measured"
			? "Fitted to the measured span"
			: null;
	const angle = (label: string, deg: number, isSaid = false) => ({
		label,
		value: formatAngle(deg, reader, 0),
		origin:
			fitted ??
			(isSaid ? "Usual for what was answered" : basisLabel("assumed", reader)),
	});
	return [
		{
			label: "Cue drawn",
			value: formatLength(cue.lengthMm, reader),
			origin: basisLabel(subject.length.basis, reader),
		},
		estimated("Bridge hand to grip hand", reach.bridgeToGripMm),
		estimated("Tip to bridge hand", reach.bridgeLengthMm),
		estimated("Grip hand to butt end of the cue drawn", behind),
		{
			label: "Cloth above the floor",
			value: formatLength(pose.clothHeightMm, reader),
			origin:
				input.stance.clothHeightMm === undefined
					? "Middle of the rules of the game"
					: basisLabel("measured", reader),
		},
		...(pose.stepMm > 0
			? [
					{
						label: "Step under the feet",
						value: formatLength(pose.stepMm, reader),
						origin: basisLabel("derived", reader),
					},
				]
			: []),
		{
			label: "Chin above the cue",
			value: formatLength(pose.chinAboveCueMm, reader),
			origin:
				fitted ??
				(input.stance.posture === undefined
					? basisLabel("assumed", reader)
					: "Usual for what was answered"),
		},
		{
			label: "Trunk from upright",
			value: formatAngle(a.trunkInclination, reader, 0),
			origin: basisLabel("derived", reader),
		},
		angle("Head from upright", a.headInclination, input.stance.glasses),
		angle(
			"Shoulder line to the shot",
			a.shoulderYaw,
			input.stance.stance !== undefined,
		),
		angle("Bridge elbow", a.bridgeElbow, input.stance.bridgeArm !== undefined),
		angle("Forearm off the upright", a.forearmTilt),
		{
			label: "Elbow of the gripping arm",
			value: formatAngle(a.gripElbow, reader, 0),
			origin: basisLabel("derived", reader),
		},
		angle("Slope of the cue over the cushion", a.cueElevation),
	];
}

const SHORTFALL_WORDS: Readonly<
	Record<Shortfall["code"], (value: string, bound: string) => string>
> = {
	"chin-below-cue": (value, bound) =>
		`Standing as high as possible the chin is ${value} above the cue, not ${bound}.`,
	"chin-above-cue": (value, bound) =>
		`Bent as far as possible the chin stays ${value} above the cue, not ${bound}.`,
	"elbow-cannot-rise": (value, bound) =>
		`For an upright forearm the upper arm would have to be ${value} times as long (${bound} at most).`,
	"grip-hand-out-of-reach": (value, bound) =>
		`For the grip hand to reach the cue the arm would have to be ${value} times as long (${bound} at most).`,
	"neck-at-limit": (value, bound) =>
		`The neck is bent back ${value}, its limit being ${bound}.`,
	"span-not-reached": (value, bound) =>
		`No pose of this body gives the measured ${bound} from hand to hand; the one drawn has ${value}.`,
};

function shortfallText(
	{ code, value, bound, unit }: Shortfall,
	reader: Reader,
): string {
	const write = (quantity: number) =>
		unit === "mm"
			? formatLength(quantity, reader)
			: unit === "deg"
				? formatAngle(quantity, reader, 0)
				: formatRatio(quantity, reader);
	return SHORTFALL_WORDS[code](write(value), write(bound));
}

function holdText(what: string, hold: Hold, reader: Reader): string {
	const angle = formatAngle(hold.angleDeg, reader, 0);
	switch (hold.zone) {
		case "no-limit-printed":
			return `${what} ${angle}: no limit of time is printed.`;
		case "time-limited":
			return `${what} ${angle}: the longest holding time printed is ${minutesText(hold.longestS ?? 0)}.`;
		case "past-limit":
			return `${what} ${angle}: past the limit for holding still.`;
	}
}

/** "1 min 36 s". */
function minutesText(seconds: number): string {
	const whole = Math.floor(seconds);
	const minutes = Math.floor(whole / 60);
	return minutes === 0 ? `${whole} s` : `${minutes} min ${whole % 60} s`;
}

/** A sentence that another one already contains is left out. */
const withoutRepeats = (texts: readonly string[]): string[] =>
	texts.filter(
		(text, index) =>
			!texts.some(
				(other, at) =>
					at !== index &&
					other
						.toLowerCase()
						.includes(text.replace(/\.? With pain.*$/, "").toLowerCase()),
			),
	);
