import type { Caution } from "@/lib/numerics/outcome";
import type { CueComparison } from "@/lib/trial/analysis";
import type { Share } from "@/lib/trial/difference";
import type { SessionEffects } from "@/lib/trial/session";
import type { Reader } from "@/lib/words/reader";
import { formatNumber, formatPercent } from "./figures";
import { counted } from "./trial-figures";

export type NameOf = (cueId: string) => string;

/** A chance as a count of a hundred; never 0 or 100, which no trial can show. */
export function chanceWords(chance: number, reader: Reader): string {
	const count = Math.round(chance * 100);
	if (count < 1) return reader.say("trial.chance.few");
	if (count > 99) return reader.say("trial.chance.most");
	return reader.say("trial.chance.some", {
		count: formatNumber(count, reader),
	});
}

const inHundred = (share: number, reader: Reader): string =>
	formatNumber(share * 100, reader);

const bandOfPots = ({ low, high }: Share, reader: Reader): string => {
	const end = (share: number) =>
		reader.say(share < 0 ? "trial.fewer" : "trial.more", {
			count: inHundred(Math.abs(share), reader),
		});
	return reader.say("figure.range", { low: end(low), high: end(high) });
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
	const { say } = reader;
	const { first, second, difference, chanceFirst, withoutDrift, won, lost } =
		ahead(comparison);
	const [one, other] = [nameOf(first), nameOf(second)];
	const { verdict, basis, comparedShots, luckChanceOfAll, needed } = comparison;
	const differing = say("trial.difference", {
		one,
		other,
		count: inHundred(difference.value, reader),
		band: bandOfPots(difference, reader),
	});
	const drifted = Math.abs(withoutDrift.value - difference.value) >= 0.01;
	return {
		headline: say(`trial.verdict.${verdict}`, { first: one, second: other }),
		lines: [
			basis === "pairs"
				? say("trial.pairs", {
						difference: differing,
						...counted(comparedShots, reader),
						one,
						other,
						won: String(won),
						lost: String(lost),
					})
				: differing,
			say("trial.luck", {
				one,
				luck: chanceWords(luckChanceOfAll, reader),
				chance: chanceWords(chanceFirst, reader),
			}),
			moreWords(comparison, reader),
			...(needed.forPower === null || verdict === "apart"
				? []
				: [powerWords(comparison, reader)]),
			...(drifted
				? [
						say("trial.drifted", {
							count: signedInHundred(withoutDrift.value, reader),
						}),
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
	const width = reader.say("trial.width", {
		count: inHundred(needed.forWidth.halfWidth, reader),
	});
	return moreForWidth === 0
		? reader.say("trial.known", { width })
		: reader.say("trial.moreForWidth", {
				...counted(moreForWidth, reader),
				width,
			});
}

function powerWords(
	{ moreForPower, needed }: CueComparison,
	reader: Reader,
): string {
	if (needed.forPower === null || moreForPower === null) return "";
	return moreForPower === 0
		? reader.say("trial.longEnough")
		: reader.say("trial.moreForPower", {
				...counted(moreForPower, reader),
				chance: chanceWords(needed.forPower.power, reader),
			});
}

/** Warm-up, drift and order, each in a sentence. */
export function sessionWords(
	{ warmUp, drift, order }: SessionEffects,
	reader: Reader,
): string[] {
	const { say } = reader;
	const luck = (by: number) => {
		const chance = chanceWords(by, reader);
		return by < 0.05
			? say("trial.session.rare", { chance })
			: say("trial.session.luck", { chance });
	};
	const percent = (share: number) => formatPercent(share, reader);
	return [
		...(warmUp === null
			? []
			: [
					say("trial.session.warmUp", {
						shots: String(warmUp.first.shots),
						first: percent(warmUp.first.value),
						rest: percent(warmUp.second.value),
						luck: luck(warmUp.luckChance),
					}),
				]),
		...(drift === null
			? []
			: [
					say("trial.session.drift", {
						start: percent(drift.atStart),
						end: percent(drift.atEnd),
						luck: luck(drift.luckChance),
					}),
				]),
		...(order === null
			? []
			: [
					say("trial.session.order", {
						first: percent(order.first.value),
						last: percent(order.second.value),
						luck: luck(order.luckChance),
					}),
				]),
	];
}

const CAUTION_CODES = [
	"trial-few-shots",
	"trial-uneven-shots",
	"trial-ended-early",
	"trial-no-pairs",
	"trial-many-comparisons",
] as const;

/** A code without words is shown as it is, never hidden. */
export function trialCautionText(
	{ code, facts }: Caution,
	reader: Reader,
): string {
	const known = CAUTION_CODES.find((one) => one === code);
	if (known === undefined) return code.replaceAll("-", " ");
	return reader.say(
		`trial.caution.${known}`,
		Object.fromEntries(
			Object.entries(facts ?? {}).map(([name, value]) => [
				name,
				formatNumber(Number(value), reader),
			]),
		),
	);
}
