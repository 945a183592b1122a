import type { CueOption } from "@/lib/advice/option";
import type { GameShare, TwoGames } from "@/lib/advice/two-games";
import type { UnitSystem } from "@/lib/units/quantity";
import { criterionName } from "./against-words";
import { formatMeasure, formatMoney } from "./criterion-words";
import { formatLength, formatPercent } from "./figures";
import { gameName, SPLICE_LABELS, woodName } from "./labels";
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

export function twoGamesView(
	found: TwoGames,
	system: UnitSystem,
): TwoGamesView {
	const { games, compromise, conflicts } = found;
	const money = games[0].own.price;
	const cue = (name: string, option: CueOption) => ({
		name,
		cue: cueText(option, system),
		price: formatMoney(option.price.totalMinor, option.price),
	});
	return {
		verdict: VERDICTS[found.verdict],
		conflicts:
			conflicts.length === 0
				? null
				: `No value is acceptable in both games of: ${joinedAnd(conflicts.map(criterionName))}.`,
		games: games.map((share) => ({
			name: gameName(share.gameId),
			text: lossText(share, compromise !== null),
		})),
		cues: [
			...games.map(({ gameId, own }) => cue(`For ${gameName(gameId)}`, own)),
			...(compromise ? [cue("For both", compromise)] : []),
		],
		prices: `Two cues: ${formatMoney(found.twoCuesMinor, money)}.${found.oneCueMinor === null ? "" : ` One for both: ${formatMoney(found.oneCueMinor, money)}.`}${money.basis === "invented" ? " From an invented price list." : ""}`,
	};
}

const cueText = ({ request, results }: CueOption, system: UnitSystem): string =>
	`${woodName(request.buttWood)}, ${SPLICE_LABELS[request.splice].toLowerCase()}; ${formatMeasure("reach", results.reach.value, system)}, ${formatMeasure("weight", results.weight.value, system)}, tip ${formatMeasure("tip", results.tip.value, system)}, butt ${formatLength(request.buttDiameterMm, system, "diameter")}`;

/** More than these would bury the first. */
const MOST_LOSING = 3;

function lossText(share: GameShare, hasCompromise: boolean): string {
	const { own, compromiseWorth, losing, closeness } = share;
	const alone = `A cue of its own is worth ${formatPercent(own.overall)} of the ideal`;
	if (!hasCompromise || compromiseWorth === 0)
		return `${alone}; no cue for both is acceptable here.`;
	const draws =
		closeness === null
			? ""
			: ` Its own is better in ${formatPercent(closeness.firstBetterShare)} of draws${closeness.tooClose ? ", too close to call" : ""}.`;
	const most = losing
		.filter((one) => formatPercent(one.own) !== formatPercent(one.compromise))
		.slice(0, MOST_LOSING)
		.map(
			(one) =>
				`${criterionName(one.criterion)} (${formatPercent(one.own)} to ${formatPercent(one.compromise)})`,
		);
	return `${alone}, the one for both ${formatPercent(compromiseWorth)}.${most.length === 0 ? " It loses on no count." : ` It loses most on ${joinedAnd(most)}.`}${draws}`;
}
