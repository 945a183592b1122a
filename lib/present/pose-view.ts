import type { FittingInput } from "@/lib/advice/input";
import { BUTT_LIMITS_MM } from "@/lib/advice/judgement";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { band90, type Estimate } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import type { Shortfall } from "@/lib/stance/pose";
import { postureNotice } from "@/lib/stance/posture";
import { overhangMm, reachFrom } from "@/lib/stance/reach";
import type { Reader } from "@/lib/words/reader";
import {
	formatAngle,
	formatLength,
	formatLengthBand,
	formatRatio,
} from "./figures";
import { basisLabel } from "./labels";
import {
	type Picture,
	type Posed,
	type PoseSubject,
	picturesOf,
} from "./pose-drawing";
import { rightHanded } from "./pose-mirror";
import type { Cue } from "./pose-props";
import { type PostureWords, postureWords } from "./posture-words";

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
	readonly posture: PostureWords;
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
		posture: postureWords(notice, reader),
	};
}

/** What of an advice its pose is drawn from, and nothing else: no other wish changes the pose. */
export function poseOf({
	input: { player, hand, stance },
	body,
	reach,
	length: { value, basis },
	tip,
	butt: { figure },
}: PoseSubject): PoseSubject {
	return {
		input: { player, hand, stance },
		body,
		reach,
		length: { value, basis },
		tip: { value: tip.value },
		butt: { figure: { value: figure.value } },
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
	const { say } = reader;
	const { anglesDeg: a } = pose;
	const mm = (value: number) => formatLength(value, reader);
	const deg = (value: number) => formatAngle(value, reader, 0);
	const { stance } = subject.input;
	const held = {
		span: mm(pose.spanMm),
		bridge: mm(cue.bridgeLengthMm),
		cue: mm(cue.lengthMm),
	};
	return [
		say("pose.summary.support", {
			support: stance.seated
				? "seated"
				: stance.standingFrame
					? "frame"
					: "standing",
			hand: left ? "left" : "right",
			cloth: mm(pose.clothHeightMm),
		}),
		say("pose.summary.trunk", {
			trunk: deg(a.trunkInclination),
			chin: mm(pose.chinAboveCueMm),
			hangs: Math.abs(a.forearmTilt) < 0.5 ? "yes" : "no",
			forearm: deg(Math.abs(a.forearmTilt)),
		}),
		behind.value < 0
			? say("pose.summary.short", { ...held, lack: mm(-behind.value) })
			: say("pose.summary.behind", { ...held, behind: mm(behind.value) }),
		say("pose.summary.above", {
			yaw: deg(a.shoulderYaw),
			elbow: deg(a.bridgeElbow),
		}),
	].join(" ");
}

function numbersOf({
	pose,
	subject,
	cue,
	behind,
	reader,
}: Posed): PoseView["numbers"] {
	const { say } = reader;
	const { reach, input } = subject;
	const { anglesDeg: a } = pose;
	const estimated = (label: string, estimate: Estimate) => ({
		label,
		value: say("pose.withBand", {
			value: formatLength(estimate.value, reader),
			band: formatLengthBand(band90(estimate), reader),
		}),
		origin: basisLabel(estimate.standing, reader),
	});
	// A measured span bends every style figure to itself, whatever was said.
	const fitted =
		reach.bridgeToGripMm.standing === "measured" ? say("pose.fitted") : null;
	const angle = (label: string, deg: number, isSaid = false) => ({
		label,
		value: formatAngle(deg, reader, 0),
		origin:
			fitted ?? (isSaid ? say("pose.answered") : basisLabel("assumed", reader)),
	});
	return [
		{
			label: say("pose.number.cue"),
			value: formatLength(cue.lengthMm, reader),
			origin: basisLabel(subject.length.basis, reader),
		},
		estimated(say("pose.number.span"), reach.bridgeToGripMm),
		estimated(say("pose.number.bridge"), reach.bridgeLengthMm),
		estimated(say("pose.number.behind"), behind),
		{
			label: say("pose.number.cloth"),
			value: formatLength(pose.clothHeightMm, reader),
			origin:
				input.stance.clothHeightMm === undefined
					? say("pose.ofRules")
					: basisLabel("measured", reader),
		},
		...(pose.stepMm > 0
			? [
					{
						label: say("pose.number.step"),
						value: formatLength(pose.stepMm, reader),
						origin: basisLabel("derived", reader),
					},
				]
			: []),
		{
			label: say("pose.number.chin"),
			value: formatLength(pose.chinAboveCueMm, reader),
			origin:
				fitted ??
				(input.stance.posture === undefined
					? basisLabel("assumed", reader)
					: say("pose.answered")),
		},
		{
			label: say("pose.number.trunk"),
			value: formatAngle(a.trunkInclination, reader, 0),
			origin: basisLabel("derived", reader),
		},
		angle(say("pose.number.head"), a.headInclination, input.stance.glasses),
		angle(
			say("pose.number.shoulders"),
			a.shoulderYaw,
			input.stance.stance !== undefined,
		),
		angle(
			say("pose.number.bridgeElbow"),
			a.bridgeElbow,
			input.stance.bridgeArm !== undefined,
		),
		angle(say("pose.number.forearm"), a.forearmTilt),
		{
			label: say("pose.number.gripElbow"),
			value: formatAngle(a.gripElbow, reader, 0),
			origin: basisLabel("derived", reader),
		},
		angle(say("pose.number.slope"), a.cueElevation),
	];
}

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
	return reader.say(`pose.shortfall.${code}`, {
		value: write(value),
		bound: write(bound),
	});
}
