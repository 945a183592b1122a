import { FIELDS } from "@/lib/forms/fields";
import { TRIAL_BOUNDS, WISH_OF, wishAnswer } from "@/lib/forms/trial";
import { band90 } from "@/lib/reference/estimate";
import { SHOTS_EACH, type TrialField } from "@/lib/trial/assumptions";
import type { PairProposal } from "@/lib/trial/proposal";
import type { WishUpdate } from "@/lib/trial/wish-update";
import type { Reader } from "@/lib/words/reader";
import { formatNumber, formatPercent } from "./figures";
import {
	counted,
	formatTrialBand,
	formatTrialFigure,
	trialFieldLabel,
} from "./trial-figures";
import type { NameOf } from "./trial-verdict";

/** "60 g lighter, 25 mm longer", from the first cue's side. */
const differWords = (
	differsBy: PairProposal["differsBy"],
	reader: Reader,
): string =>
	(Object.entries(differsBy) as [TrialField, number][])
		.map(([field, by]) =>
			reader.say(`trial.differs.${field}.${by > 0 ? "more" : "less"}`, {
				by: formatTrialFigure(field, Math.abs(by), reader),
			}),
		)
		.join(", ");

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
	const { say } = reader;
	const [one, other] = proposal.cueIds.map(nameOf) as [string, string];
	const { shotsEach, limitedBy, expectedGain, comparedAt } = proposal;
	const differs = differWords(proposal.differsBy, reader);
	const [first, second] = proposal.shotsSoFar;
	const left = formatPercent(
		(proposal.doubtAfter / proposal.doubtBefore) ** 2,
		reader,
	);
	return {
		title: say("trial.proposal.title", {
			one,
			other,
			shots: String(shotsEach),
		}),
		lines: [
			differs === ""
				? say("trial.proposal.alike")
				: say("trial.proposal.differ", { one, differs }),
			say("trial.proposal.soFar", {
				one,
				other,
				firstMany: first,
				first: formatNumber(first, reader),
				secondMany: second,
				second: formatNumber(second, reader),
			}),
			limitedBy === "most"
				? say("trial.proposal.evenMost", {
						most: String(SHOTS_EACH.most),
						left,
					})
				: say("trial.proposal.left", { left }),
			say("trial.proposal.gain", {
				first: isFirst ? "yes" : "no",
				gain: formatNumber(expectedGain * 100, reader, 1),
				shots: String(comparedAt),
				bits: formatNumber(proposal.informationBits, reader, 2),
			}),
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
	const { say } = reader;
	const { field, value, sd, because } = update;
	const write = (figure: number) => formatTrialFigure(field, figure, reader);
	const wish = WISH_OF[field];
	const bound = boundOf(field);
	const fits = value >= bound.min && value <= bound.max;
	return {
		field,
		label: trialFieldLabel(field, reader),
		value: write(value),
		band: formatTrialBand(field, band90({ value, sd }), reader),
		sentence: say("trial.wish.sentence", {
			...counted(because.shots, reader),
			low: write(because.triedLow),
			high: write(because.triedHigh),
			from: because.before.from,
			before: write(because.before.value),
			removed: formatPercent(because.shareOfDoubtRemoved, reader),
			guessLow: write(because.valueLow),
			guessHigh: write(because.valueHigh),
		}),
		answer: wish !== null && fits ? wishAnswer(field, value) : null,
		whyNot:
			wish === null
				? say("trial.wish.noBalance")
				: fits
					? null
					: say("trial.wish.outside", {
							low: write(bound.min),
							high: write(bound.max),
						}),
	};
}

function boundOf(field: TrialField): { min: number; max: number } {
	const wish = WISH_OF[field];
	const asked = wish === null ? null : FIELDS[wish];
	return asked !== null && "bound" in asked ? asked.bound : TRIAL_BOUNDS[field];
}
