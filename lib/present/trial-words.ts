import { FIELDS } from "@/lib/forms/fields";
import { TRIAL_BOUNDS, WISH_OF, wishAnswer } from "@/lib/forms/trial";
import type { Caution } from "@/lib/numerics/outcome";
import { CITATIONS } from "@/lib/reference/citations";
import { band90 } from "@/lib/reference/estimate";
import type { CueComparison, Verdict } from "@/lib/trial/analysis";
import {
	FALL_OFF,
	SHOTS_EACH,
	TRIAL_FIELDS,
	type TrialField,
	WORTH_HAVING,
} from "@/lib/trial/assumptions";
import type { Share } from "@/lib/trial/difference";
import type { CueFigures } from "@/lib/trial/preference";
import type { PairProposal } from "@/lib/trial/proposal";
import type { SessionEffects } from "@/lib/trial/session";
import type { WishUpdate } from "@/lib/trial/wish-update";
import type { Reader } from "@/lib/words/reader";
import {
	formatLength,
	formatLengthBand,
	formatMass,
	formatMassBand,
	formatNumber,
	formatPercent,
} from "./figures";

export type NameOf = (cueId: string) => string;

/** The known figures of a cue, in the order they are shown. */
export const TRIAL_FIELD_LABELS: Readonly<Record<TrialField, string>> = {
	lengthMm: "Length",
	massG: "Weight",
	buttDiameterMm: "Butt diameter",
	tipDiameterMm: "Tip",
	balanceFromButtMm: "Balance from the butt end",
};

const kindOf = (field: TrialField) =>
	field === "buttDiameterMm" || field === "tipDiameterMm"
		? ("diameter" as const)
		: ("length" as const);

export const formatTrialFigure = (
	field: TrialField,
	value: number,
	reader: Reader,
): string =>
	field === "massG"
		? formatMass(value, reader)
		: formatLength(value, reader, kindOf(field));

const formatTrialBand = (
	field: TrialField,
	band: { low: number; high: number },
	reader: Reader,
): string =>
	field === "massG"
		? formatMassBand(band, reader)
		: formatLengthBand(band, reader, kindOf(field));

/** "1460 mm, 510 g, butt 29 mm, tip 9.5 mm, balance 432 mm". */
export function figuresLine(cue: CueFigures, reader: Reader): string {
	const write = (field: TrialField) =>
		formatTrialFigure(field, cue[field], reader);
	return [
		write("lengthMm"),
		write("massG"),
		`butt ${write("buttDiameterMm")}`,
		`tip ${write("tipDiameterMm")}`,
		`balance ${write("balanceFromButtMm")}`,
	].join(", ");
}

/** A chance as a count of a hundred; never 0 or 100, which no trial can show. */
export function chanceWords(chance: number): string {
	const inHundred = Math.round(chance * 100);
	if (inHundred < 1) return "fewer than 1 in 100";
	if (inHundred > 99) return "more than 99 in 100";
	return `${inHundred} in 100`;
}

const inHundred = (share: number, reader: Reader): string =>
	formatNumber(share * 100, reader);

const count = (many: number, noun: string, reader: Reader): string =>
	`${formatNumber(many, reader)} ${noun}${many === 1 ? "" : "s"}`;

const bandOfPots = ({ low, high }: Share, reader: Reader): string => {
	const end = (share: number) =>
		`${inHundred(Math.abs(share), reader)} ${share < 0 ? "fewer" : "more"}`;
	return `${end(low)} to ${end(high)}`;
};

/** The same comparison with the cue that is ahead first. */
function ahead(comparison: CueComparison): {
	first: string;
	second: string;
	difference: Share;
	chanceFirst: number;
	withoutDrift: Share;
	won: number;
	lost: number;
} {
	const { cueIds, difference, withoutDrift, pairCounts } = comparison;
	const turned = ({ value, low, high }: Share): Share => ({
		value: -value,
		low: -high,
		high: -low,
	});
	const [first, second] = cueIds;
	const [won, lost] = [pairCounts?.onlyFirst ?? 0, pairCounts?.onlySecond ?? 0];
	return difference.value >= 0
		? {
				first,
				second,
				difference,
				chanceFirst: difference.chanceFirstHigher,
				withoutDrift,
				won,
				lost,
			}
		: {
				first: second,
				second: first,
				difference: turned(difference),
				chanceFirst: 1 - difference.chanceFirstHigher,
				withoutDrift: turned(withoutDrift),
				won: lost,
				lost: won,
			};
}

const HEADLINES: Readonly<
	Record<Verdict, (first: string, second: string) => string>
> = {
	apart: (first, second) =>
		`More is potted with ${first} than with ${second}, and luck alone would rarely do that.`,
	leaning: (first) => `It leans towards ${first}, but it could still be luck.`,
	same: (first, second) =>
		`Between ${first} and ${second} there is no difference worth having.`,
	open: (first, second) =>
		`It could be luck: ${first} and ${second} cannot be told apart yet.`,
};

export interface ComparisonWords {
	readonly headline: string;
	readonly lines: readonly string[];
}

/** What a comparison comes to, in sentences that keep their numbers. */
export function comparisonWords(
	comparison: CueComparison,
	nameOf: NameOf,
	reader: Reader,
): ComparisonWords {
	const { first, second, difference, chanceFirst, withoutDrift, won, lost } =
		ahead(comparison);
	const [one, other] = [nameOf(first), nameOf(second)];
	const { verdict, basis, comparedShots, luckChanceOfAll, needed } = comparison;
	const pairWords =
		basis === "pairs"
			? ` Judged on ${count(comparedShots, "pair", reader)} with the same set-up: in ${won} only ${one} potted, in ${lost} only ${other}.`
			: "";
	const drifted = Math.abs(withoutDrift.value - difference.value) >= 0.01;
	return {
		headline: HEADLINES[verdict](one, other),
		lines: [
			`With ${one} about ${inHundred(difference.value, reader)} more of 100 are potted than with ${other}; nine in ten ${bandOfPots(difference, reader)}.${pairWords}`,
			`If the two were equally good, a difference this large or larger would come up by luck in ${chanceWords(luckChanceOfAll)} such trials. Taken by itself, with nothing believed of the cues before, the chance that ${one} is really the better one is ${chanceWords(chanceFirst)}.`,
			moreWords(comparison, reader),
			...(needed.forPower === null || verdict === "apart"
				? []
				: [powerWords(comparison, reader)]),
			...(drifted
				? [
						`Allowing for warm-up and tiring leaves ${signedInHundred(withoutDrift.value, reader)} in 100.`,
					]
				: []),
		],
	};
}

const signedInHundred = (share: number, reader: Reader): string =>
	`${share < 0 ? "" : "+"}${inHundred(share, reader)}`;

function moreWords(
	{ moreForWidth, needed }: CueComparison,
	reader: Reader,
): string {
	const width = `${inHundred(needed.forWidth.halfWidth, reader)} in 100 to each side`;
	return moreForWidth === 0
		? `The difference is already known to within ${width}.`
		: `About ${count(moreForWidth, "more shot", reader)} with each would settle it to within ${width}.`;
}

function powerWords(
	{ moreForPower, needed }: CueComparison,
	reader: Reader,
): string {
	if (needed.forPower === null || moreForPower === null) return "";
	return moreForPower === 0
		? `Were the difference really as large as it looks, a trial of this length would mostly have shown it.`
		: `Were the difference really as large as it looks, about ${count(moreForPower, "more shot", reader)} with each would show it in ${chanceWords(needed.forPower.power)} trials.`;
}

/** Warm-up, drift and order, each in a sentence. */
export function sessionWords(
	{ warmUp, drift, order }: SessionEffects,
	reader: Reader,
): string[] {
	const luck = (chance: number) =>
		chance < 0.05
			? `luck alone would do that in ${chanceWords(chance)} sessions`
			: `that could be luck: ${chanceWords(chance)}`;
	return [
		...(warmUp === null
			? []
			: [
					`Warm-up: of the first ${warmUp.first.shots} shots about ${formatPercent(warmUp.first.value, reader)} were potted, of the rest about ${formatPercent(warmUp.second.value, reader)}; ${luck(warmUp.luckChance)}.`,
				]),
		...(drift === null
			? []
			: [
					`Over the session: from about ${formatPercent(drift.atStart, reader)} at the first shot to about ${formatPercent(drift.atEnd, reader)} at the last; ${luck(drift.luckChance)}.`,
				]),
		...(order === null
			? []
			: [
					`Order: with the cue that had the first turn of a round about ${formatPercent(order.first.value, reader)} were potted, with the last about ${formatPercent(order.second.value, reader)}; ${luck(order.luckChance)}.`,
				]),
	];
}

const fact = ({ facts }: Caution, name: string, reader: Reader): string =>
	formatNumber(Number(facts?.[name]), reader);

const CAUTIONS: Readonly<
	Record<string, (caution: Caution, reader: Reader) => string>
> = {
	"trial-few-shots": (caution, reader) =>
		`One cue has ${fact(caution, "fewestShots", reader)} shots. Below ${fact(caution, "wantedShots", reader)} with each nearly everything is luck.`,
	"trial-uneven-shots": (caution, reader) =>
		`The shots are uneven: ${fact(caution, "fewestShots", reader)} with one cue, ${fact(caution, "mostShots", reader)} with another. The cue with fewer sets how much is known.`,
	"trial-ended-early": (caution, reader) =>
		`${fact(caution, "shots", reader)} of ${fact(caution, "plannedShots", reader)} planned shots are in. Whoever stops when the result looks good is misled oftener than these numbers say.`,
	"trial-no-pairs": () =>
		"The same set-ups were to be shot with each cue, but no pair is complete; the shots are compared as separate ones.",
	"trial-many-comparisons": (caution, reader) =>
		`${fact(caution, "comparisons", reader)} pairs of cues are compared at once; the chances of luck allow for that.`,
};

export const trialCautionText = (caution: Caution, reader: Reader): string =>
	CAUTIONS[caution.code]?.(caution, reader) ??
	caution.code.replaceAll("-", " ");

/** "60 g lighter, 25 mm longer", from the first cue's side. */
function differWords(
	differsBy: PairProposal["differsBy"],
	reader: Reader,
): string {
	const words: Readonly<Record<TrialField, readonly [string, string]>> = {
		lengthMm: ["longer", "shorter"],
		massG: ["heavier", "lighter"],
		buttDiameterMm: ["thicker in the butt", "slimmer in the butt"],
		tipDiameterMm: ["larger in the tip", "smaller in the tip"],
		balanceFromButtMm: [
			"further forward in balance",
			"further back in balance",
		],
	};
	return (Object.entries(differsBy) as [TrialField, number][])
		.map(
			([field, by]) =>
				`${formatTrialFigure(field, Math.abs(by), reader)} ${words[field][by > 0 ? 0 : 1]}`,
		)
		.join(", ");
}

export interface ProposalWords {
	readonly title: string;
	readonly lines: readonly string[];
}

/** Which two cues to try next, how long, and why those. */
export function proposalWords(
	proposal: PairProposal,
	nameOf: NameOf,
	reader: Reader,
	isFirst: boolean,
): ProposalWords {
	const [one, other] = proposal.cueIds.map(nameOf) as [string, string];
	const { shotsEach, limitedBy, expectedGain, comparedAt } = proposal;
	const differs = differWords(proposal.differsBy, reader);
	const [first, second] = proposal.shotsSoFar;
	const left = formatPercent(
		(proposal.doubtAfter / proposal.doubtBefore) ** 2,
		reader,
	);
	return {
		title: `${one} and ${other}, ${shotsEach} shots with each`,
		lines: [
			differs === ""
				? `Their known figures are the same.`
				: `${one} is ${differs}.`,
			`So far ${count(first, "shot", reader)} with ${one} and ${count(second, "shot", reader)} with ${other}.`,
			limitedBy === "most"
				? `Even ${SHOTS_EACH.most} shots with each leave ${left} of the doubt (variance) about their difference.`
				: `After those shots ${left} of the doubt (variance) about their difference is left.`,
			`${isFirst ? "Of all pairs this helps most in picking the better cue" : "Towards picking the better cue"}: an expected ${formatNumber(expectedGain * 100, reader, 1)} pots in 100 from ${comparedAt} shots with each, and ${formatNumber(proposal.informationBits, reader, 2)} bits of information about the rack.`,
		],
	};
}

/** One wish on offer. */
export interface WishOffer {
	readonly field: TrialField;
	readonly label: string;
	/** "489 g" */
	readonly value: string;
	readonly band: string;
	readonly sentence: string;
	/** Answer to put in; null where it cannot be wished for, or lies outside what can be built. */
	readonly answer: string | null;
	readonly whyNot: string | null;
}

export function wishOffer(update: WishUpdate, reader: Reader): WishOffer {
	const { field, value, sd, because } = update;
	const write = (figure: number) => formatTrialFigure(field, figure, reader);
	const wish = WISH_OF[field];
	const bound = boundOf(field);
	const fits = value >= bound.min && value <= bound.max;
	const before =
		because.before.from === "advice" ? "the advice" : "the average of the rack";
	return {
		field,
		label: TRIAL_FIELD_LABELS[field],
		value: write(value),
		band: formatTrialBand(field, band90({ value, sd }), reader),
		sentence: `From ${count(because.shots, "shot", reader)} with cues of ${write(because.triedLow)} to ${write(because.triedHigh)}, and ${before} (${write(because.before.value)}) before them. The trials took away ${formatPercent(because.shareOfDoubtRemoved, reader)} of the doubt. With another guess of how fast pots fall off away from the best figure it would be ${write(because.valueLow)} to ${write(because.valueHigh)}.`,
		answer: wish !== null && fits ? wishAnswer(field, value) : null,
		whyNot:
			wish === null
				? "A fitting has no wish for the balance; it follows from the build."
				: fits
					? null
					: `A fitting takes ${write(bound.min)} to ${write(bound.max)}.`,
	};
}

function boundOf(field: TrialField): { min: number; max: number } {
	const wish = WISH_OF[field];
	const asked = wish === null ? null : FIELDS[wish];
	return asked !== null && "bound" in asked ? asked.bound : TRIAL_BOUNDS[field];
}

/** How the numbers of a trial come about, for who wants to know. */
export const methodLines = (reader: Reader): string[] => [
	"Share potted: the mean of a beta distribution after the shots, starting from half a pot and half a miss (Jeffreys’ prior); nine in ten is its central 90 %.",
	"Difference of two cues: from both distributions exactly; where the same set-ups were shot, from the pairs alone, which takes the difficulty of the shot out.",
	"Luck: how often dealing the same shots to the cues at random gives a difference this large or larger, either way; for pairs by flipping which cue of a pair it was. Of several comparisons each is made stricter (Holm).",
	`More shots: until the 90 % interval is ${formatNumber(WORTH_HAVING * 100, reader)} in 100 to each side, a difference this project takes as the smallest worth having.`,
	"Which pair next: pots fall off with the square of the distance from the player’s own best figures; the trials narrow where those are. The pair with the greatest expected gain of the later choice comes first.",
	`How fast they fall off is this project’s guess: ${TRIAL_FIELDS.map(
		(field) =>
			`${TRIAL_FIELD_LABELS[field].toLowerCase()} ${formatNumber(FALL_OFF[field], reader, 1).replace(".0", "")} ${field === "massG" ? "g" : "mm"}`,
	).join(
		", ",
	)} off cost half a unit of log-odds. Half and twice its square are computed too, and their spread is in the band.`,
	"Only differences within a session count; how hard a session was does not.",
];

export const methodSources = (): string[] =>
	(
		[
			"brown-cai-dasgupta-2001",
			"fisher-1935",
			"mcnemar-1947",
			"holm-1979",
			"williams-1949",
			"connor-1987",
			"fleiss-2003",
			"lindley-1956",
			"frazier-2009",
			"project-judgement",
		] as const
	).map((id) => CITATIONS[id].title);
