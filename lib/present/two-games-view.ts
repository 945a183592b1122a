import type { CueOption } from "@/lib/advice/option";
import type { GameShare, TwoGames } from "@/lib/advice/two-games";
import type { Reader } from "@/lib/words/reader";
import { criterionName, formatMeasure, formatMoney } from "./criterion-words";
import { formatLength, formatPercent } from "./figures";
import { gameName, inSentence, woodName } from "./labels";
import { joinedAnd } from "./lists";

export interface TwoGamesView {
	readonly verdict: string;
	readonly conflicts: string | null;
	readonly games: readonly { readonly name: string; readonly text: string }[];
	readonly cues: readonly {
		readonly name: string;
		readonly cue: string;
		readonly price: string;
	}[];
	readonly prices: string;
}

export function twoGamesView(found: TwoGames, reader: Reader): TwoGamesView {
	const { say } = reader;
	const { games, compromise, conflicts } = found;
	const cue = (name: string, option: CueOption) => ({
		name,
		cue: cueText(option, reader),
		price: formatMoney(option.price.totalMinor, option.price, reader),
	});
	return {
		verdict: say(`twoGames.verdict.${found.verdict}`),
		conflicts:
			conflicts.length === 0
				? null
				: say("twoGames.conflicts", {
						criteria: joinedAnd(
							conflicts.map((id) => criterionName(id, reader)),
							reader,
						),
					}),
		games: games.map((share) => ({
			name: gameName(share.gameId, reader),
			text: lossText(share, compromise !== null, reader),
		})),
		cues: [
			...games.map(({ gameId, own }) =>
				cue(say("twoGames.forGame", { game: gameName(gameId, reader) }), own),
			),
			...(compromise ? [cue(say("twoGames.forBoth"), compromise)] : []),
		],
		prices: pricesText(found, reader),
	};
}

function pricesText(found: TwoGames, reader: Reader): string {
	const { say } = reader;
	const money = found.games[0].own.price;
	const two = say("twoGames.twoCues", {
		price: formatMoney(found.twoCuesMinor, money, reader),
	});
	const prices =
		found.oneCueMinor === null
			? two
			: say("twoGames.oneForBoth", {
					two,
					price: formatMoney(found.oneCueMinor, money, reader),
				});
	return money.basis === "invented"
		? say("twoGames.invented", { prices })
		: prices;
}

const cueText = ({ request, results }: CueOption, reader: Reader): string =>
	reader.say("twoGames.cue", {
		wood: woodName(request.buttWood, reader),
		splice: inSentence.splice(request.splice, reader),
		length: formatMeasure("reach", results.reach.value, reader),
		weight: formatMeasure("weight", results.weight.value, reader),
		tip: formatMeasure("tip", results.tip.value, reader),
		butt: formatLength(request.buttDiameterMm, reader, "diameter"),
	});

/** More than these would bury the first. */
const MOST_LOSING = 3;

function lossText(
	share: GameShare,
	hasCompromise: boolean,
	reader: Reader,
): string {
	const { say } = reader;
	const { own, compromiseWorth, losing, closeness } = share;
	const worth = formatPercent(own.overall, reader);
	if (!hasCompromise || compromiseWorth === 0)
		return say("twoGames.alone", { worth });
	const both = say("twoGames.both", {
		worth,
		both: formatPercent(compromiseWorth, reader),
	});
	const most = losing
		.filter(
			(one) =>
				formatPercent(one.own, reader) !==
				formatPercent(one.compromise, reader),
		)
		.slice(0, MOST_LOSING)
		.map((one) =>
			say("twoGames.loss", {
				criterion: criterionName(one.criterion, reader),
				own: formatPercent(one.own, reader),
				both: formatPercent(one.compromise, reader),
			}),
		);
	const sentence =
		most.length === 0
			? say("twoGames.losesNone", { sentence: both })
			: say("twoGames.loses", {
					sentence: both,
					counts: joinedAnd(most, reader),
				});
	return closeness === null
		? sentence
		: say("twoGames.draws", {
				sentence,
				share: formatPercent(closeness.firstBetterShare, reader),
				close: closeness.tooClose ? "yes" : "no",
			});
}
