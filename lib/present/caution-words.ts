import type { MeasureName } from "@/lib/forms/fitting-input";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import {
	formatAngle,
	formatLength,
	formatLengthBand,
	formatMass,
	formatNumber,
	type LengthKind,
} from "./figures";
import { gameName, MEASURE_LABELS, woodName } from "./labels";

export type Facts = Readonly<Record<string, number | string>>;

/** The facts of one caution, written out in the reader's units. */
interface Told {
	readonly mm: (name: string, kind?: LengthKind) => string;
	readonly band: (low: string, high: string, kind?: LengthKind) => string;
	readonly g: (name: string) => string;
	readonly deg: (name: string) => string;
	readonly number: (name: string) => number;
	readonly reader: Reader;
	readonly game: () => string;
	readonly wood: (name: string) => string;
	readonly text: (name: string) => string;
}

export const numberIn = (facts: Facts | undefined, name: string): number => {
	const value = facts?.[name];
	if (typeof value !== "number")
		throw new TypeError(`a notice lacks the number ${name}`);
	return value;
};

export function telling(facts: Facts | undefined, reader: Reader): Told {
	const number = (name: string) => numberIn(facts, name);
	const text = (name: string) => String(facts?.[name]);
	return {
		reader,
		number,
		text,
		mm: (name, kind = "length") => formatLength(number(name), reader, kind),
		band: (low, high, kind = "length") =>
			formatLengthBand({ low: number(low), high: number(high) }, reader, kind),
		g: (name) => formatMass(number(name), reader),
		deg: (name) => formatAngle(number(name), reader, 0),
		game: () => gameName(text("gameId") as GameId),
		wood: (name) => woodName(text(name) as WoodId),
	};
}

const SEE_SOMEBODY =
	"With pain, numbness or a known back or neck condition, ask a physiotherapist or doctor.";

/** Sentences by caution code: what travels beside a result without stopping it. */
export const CAUTION_WORDS: Readonly<Record<string, (told: Told) => string>> = {
	// The player.
	"stature-estimated": () =>
		"Height was left out: the tables’ average stands in, so every length here is wide.",
	"outside-source-range": ({ text, number, mm, reader }) =>
		text("field") === "ageYears"
			? `An age of ${formatNumber(number("value"), reader)} is outside the tables’ own range (${formatNumber(number("min"), reader)} to ${formatNumber(number("max"), reader)} years): the lines are drawn on beyond it, with more doubt than the bands show.`
			: `A height of ${mm("value", "body")} is outside the tables’ own range (${mm("min", "body")} to ${mm("max", "body")}): the lines are drawn on beyond it, with more doubt than the bands show.`,
	"reading-unexpected": ({ mm, text }) => {
		const measure = text("field").replace(/Mm$/, "") as MeasureName;
		const kind =
			measure === "stature" || measure === "armSpan" ? "body" : "limb";
		return `${MEASURE_LABELS[measure]}: ${mm("value", kind)} is unusual where the other readings suggest ${mm("expectedMm", kind)}. It is taken as it stands: read it once more.`;
	},
	"grip-circle-assumed": () =>
		"The grip circle was not read. What stands in is a guess from the hand’s length; reading it on a cone or dowels is the one measure that sharpens the butt most.",
	"single-reading": () =>
		"One reading of the grip circle: take two more, opening the hand between them.",
	"readings-disagree": ({ mm }) =>
		`The readings of the grip circle lie ${mm("spreadMm", "gap")} apart; more than ${mm("agreementMm", "gap")} is worth reading again.`,
	"ring-above-largest-grip": ({ mm }) =>
		`A grip circle of ${mm("circleMm", "diameter")} is more than this hand should close round (about ${mm("largestMm", "diameter")}). Check the reading.`,
	// The stance.
	"stance-assumed": () =>
		"The span from bridge hand to grip hand was not measured: what stands in comes from the body and the usual stance.",
	"span-unexpected": ({ mm }) =>
		`A span of ${mm("bridgeToGripMm")} from bridge hand to grip hand is far from the ${mm("expectedMm")} this body suggests. It is taken as it stands: read it once more.`,
	"span-not-reached": ({ mm }) =>
		`No pose of this body reaches the measured span of ${mm("bridgeToGripMm")}; the nearest reaches ${mm("reachedMm")}. Check the span and the body’s measures.`,
	"step-needed": ({ mm }) =>
		`The table is high for this player (cloth ${mm("clothHeightMm")}, shoulder ${mm("shoulderHeightMm")}): the pose drawn stands on a step of about ${mm("stepMm")}.`,
	"chin-above-cue": ({ mm }) =>
		`The trunk cannot lean far enough to bring the chin to ${mm("wantedMm")} above the cue; ${mm("chinAboveCueMm")} is reached.`,
	"chin-below-cue": ({ mm }) =>
		`At full height the chin is ${mm("chinAboveCueMm")} above the cue, not the ${mm("wantedMm")} asked for.`,
	"elbow-cannot-rise": () =>
		"The elbow cannot rise as far as an upright forearm asks.",
	"neck-at-limit": () => "The neck is at its limit in this pose.",
	"forearm-not-upright": () =>
		"The upper arm is too short for an upright forearm in this pose: the grip is drawn as near to it as the arm allows.",
	"posture-past-static-limits": ({ deg, number, reader }) =>
		`A trunk leaning ${deg("trunkDeg")} with the head ${formatAngle(Math.abs(number("neckDeg")), reader, 0)} ${number("neckDeg") < 0 ? "back from" : "forward of"} it is past the limits ISO 11226 sets for holding still (trunk up to ${deg("trunkLimitDeg")}, head not bent back). Down on the shot is held for seconds: stand up between shots. ${SEE_SOMEBODY}`,
	"posture-time-limited": ({ deg, number, reader }) =>
		`A trunk leaning ${deg("trunkDeg")} may be held for about ${formatNumber(number("longestS"), reader)} seconds by ISO 11226: stand up between shots. ${SEE_SOMEBODY}`,
	"posture-asymmetric": ({ number, reader }) =>
		`The trunk leans about ${formatAngle(Math.abs(number("sideBendDeg")), reader, 0)} to one side; ISO 11226 asks for symmetry where a posture is held.`,
	"posture-limits-exclude-juniors": () =>
		"Those limits were written for adults. For a junior, a responsible adult is present and agrees.",
	"stand-up-between-shots": () => `Stand up between shots. ${SEE_SOMEBODY}`,
	"growth-range-not-promise": () =>
		"Growth is a range, not a promise: measure again when it falls due.",
	"lengthening-shifts-balance": () =>
		"Lengthening a cue at the butt end moves its balance back.",
	"build-guessed": ({ text }) =>
		`The build of the present cue was not said (${text("unknown")
			.replace(/([A-Z])/g, " $1")
			.toLowerCase()}): every usual one that explains its weight and balance is weighed up.`,
	"present-cue-not-explained": () =>
		"No usual build explains the present cue’s figures together: check its length, weight and balance. The feel of the usual build stands in.",
	// The figures.
	"length-raised-to-rule": ({ mm, game }) =>
		`The body asks for ${mm("wantedMm")}; the rules of ${game()} ask for at least ${mm("ruleMinMm")}.`,
	"length-outside-window": ({ mm, band }) =>
		`${mm("lengthMm")} lies outside what the stance leaves room for (${band("lowMm", "highMm")}): the grip hand or the bridge has to move.`,
	"butt-range-cut-by-bench": ({ band }) =>
		`The hand would take ${band("lowMm", "highMm", "diameter")}; the bench turns ${band("benchMinMm", "benchMaxMm", "diameter")}.`,
	"mass-raised-to-wood": ({ g, wood }) =>
		`The figures point to ${g("wantedG")}, but this build in ${wood("buttWood").toLowerCase()} weighs about ${g("naturalMassG")} with nothing added. A lighter butt wood or a slimmer butt would bring it down.`,
	"mass-lowered-to-bore": ({ g }) =>
		`The figures point to ${g("wantedG")}, but the bore that leaves sound wood has room for ${g("nearestG")} at most. A denser butt wood or a thicker butt would allow more.`,
	"balance-outside-usual": ({ mm, band }) =>
		`A balance point ${mm("balanceFromButtMm")} from the butt end is outside the usual ${band("lowMm", "highMm")} (common practice).`,
	"moisture-outside-change-range": ({ text, number, reader }) =>
		`In the ${text("season")} wood comes to ${formatNumber(number("moisturePct"), reader, 1)}%, outside the ${formatNumber(number("minPct"), reader)} to ${formatNumber(number("maxPct"), reader)}% the published figures of shrinkage hold for: the thicknesses there are drawn on beyond them.`,
	// The bench.
	"natural-above-wanted": ({ g }) =>
		`The billets of the tables come out ${g("excessG")} above the weight wanted; lighter ones, within their spread, meet it with nothing added.`,
	"bore-meets-glue-lines": ({ mm }) =>
		`The bore of ${mm("boreDiameterMm", "diameter")} reaches past the core, whose flats stand ${mm("coreHalfWidthMm", "diameter")} from the axis there, into the glue lines: bore after the glue has cured fully, in small steps.`,
	"weigh-before-boring": ({ g }) =>
		`Weigh the turned cue before boring: billets differ, and with them the natural weight by about ${g("naturalMassSdG")} either way.`,
	"lead-handling": () => LEAD,
	lead: () => LEAD,
	"wood-dust": () =>
		"Wood dust harms lungs and nose. Extract it at the tool and wear a fitted mask; local exposure limits apply.",
	"wood-dust-sensitiser": ({ wood }) =>
		`Dust of ${wood("wood").toLowerCase()} can sensitise skin and lungs. Cover up, and stop if anything itches or wheezes.`,
	turning: () =>
		"Lathe: eye protection, no gloves or loose sleeves, blank supported along its length. Local codes apply.",
	adhesives: () =>
		"Epoxy and thin adhesives: gloves and ventilation, and the maker’s sheet for mixing and cure.",
	"protected-wood": ({ wood, text }) =>
		`${wood("wood")} is listed in CITES Appendix ${text("appendix")} (data of ${text("dataDate")}). Listings change: ask the national CITES authority before wood or cue crosses a border.`,
};

const LEAD =
	"Lead: gloves, no sanding or melting, wash hands, and close the bore. Brass or steel is preferred.";
