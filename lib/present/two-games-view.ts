import type { CueOption } from "@/lib/advice/option";
import type { GameShare, TwoGames } from "@/lib/advice/two-games";
import type { Reader } from "@/lib/words/reader";
import { criterionName } from "./against-words";
import { formatMeasure, formatMoney } from "./criterion-words";
import { formatLength, formatPercent } from "./figures";
import { gameName, inSentence, woodName } from "./labels";
import { joinedAnd } from "./like-mine-view";

export const VERDICTS: Readonly<Record<TwoGames["verdict"], string>> = {
	"one-cue": "One cue serves both games: it loses little in either.",
	"two-cues":
		"Two cues: one for both would lose more than a little, and the loss can be told from none.",
	"too-close-to-call":
		"Too close to call: one cue loses more than a little by the estimates, yet what is not known hides it.",
};

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
	const { games, compromise, conflicts } = found;
	const money = games[0].own.price;
	const cue = (name: string, option: CueOption) => ({
		name,
		cue: cueText(option, reader),
		price: formatMoney(option.price.totalMinor, option.price, reader),
	});
	return {
		verdict: VERDICTS[found.verdict],
		conflicts:
			conflicts.length === 0
				? null
				: `No value is acceptable in both games of: ${joinedAnd(conflicts.map(criterionName))}.`,
		games: games.map((share) => ({
			name: gameName(share.gameId, reader),
			text: lossText(share, compromise !== null, reader),
		})),
		cues: [
			...games.map(({ gameId, own }) =>
				cue(`For ${gameName(gameId, reader)}`, own),
			),
			...(compromise ? [cue("For both", compromise)] : []),
		],
		prices: `Two cues: ${formatMoney(found.twoCuesMinor, money, reader)}.${found.oneCueMinor === null ? "" : ` One for both: ${formatMoney(found.oneCueMinor, money, reader)}.`}${money.basis === "invented" ? " From an invented price list." : ""}`,
	};
}

const cueText = ({ request, results }: CueOption, reader: Reader): string =>
	`${woodName(request.buttWood, reader)}, ${inSentence.splice(request.splice, reader)}; ${formatMeasure("reach", results.reach.value, reader)}, ${formatMeasure("weight", results.weight.value, reader)}, tip ${formatMeasure("tip", results.tip.value, reader)}, butt ${formatLength(request.buttDiameterMm, reader, "diameter")}`;

/** More than these would bury the first. */
const MOST_LOSING = 3;

function lossText(
	share: GameShare,
	hasCompromise: boolean,
	reader: Reader,
): string {
	const { own, compromiseWorth, losing, closeness } = share;
	const alone = `A cue of its own is worth ${formatPercent(own.overall, reader)} of the ideal`;
	if (!hasCompromise || compromiseWorth === 0)
		return `${alone}; no cue for both is acceptable here.`;
	const draws =
		closeness === null
			? ""
			: ` Its own is better in ${formatPercent(closeness.firstBetterShare, reader)} of draws${closeness.tooClose ? ", too close to call" : ""}.`;
	const most = losing
		.filter(
			(one) =>
				formatPercent(one.own, reader) !==
				formatPercent(one.compromise, reader),
		)
		.slice(0, MOST_LOSING)
		.map(
			(one) =>
				`${criterionName(one.criterion)} (${formatPercent(one.own, reader)} to ${formatPercent(one.compromise, reader)})`,
		);
	return `${alone}, the one for both ${formatPercent(compromiseWorth, reader)}.${most.length === 0 ? " It loses on no count." : ` It loses most on ${joinedAnd(most)}.`}${draws}`;
}
