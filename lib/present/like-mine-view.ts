import type {
	FeelKept,
	LikeMine,
	LikeMinePair,
} from "@/lib/advice/like-mine-advice";
import type { Reader } from "@/lib/words/reader";
import { formatMeasure } from "./criterion-words";
import { formatLength, formatMass, formatNumber } from "./figures";
import { cautionText } from "./notices";

export interface LikeMineView {
	/** What is kept together, or what cannot be. */
	readonly verdict: string;
	readonly rows: readonly {
		readonly name: string;
		readonly now: string;
		readonly becomes: string;
		readonly kept: string;
	}[];
	readonly bench: string;
	/** Other pairs that were solved for, nearest first. */
	readonly others: readonly string[];
	readonly taper: string;
	readonly cautions: readonly string[];
}

type Name = "mass" | "balance" | "inertia" | "stiffness";

export const KEPT_LABELS: Readonly<Record<Name, string>> = {
	mass: "weight",
	balance: "balance point",
	inertia: "steadiness about the grip hand",
	stiffness: "give of the shaft",
};

const CRITERION_OF = {
	mass: "weight",
	balance: "balance",
	inertia: "steadiness",
	stiffness: "stiffness",
} as const;

const say = (name: Name, value: number, reader: Reader): string =>
	formatMeasure(CRITERION_OF[name], value, reader);

const capital = (text: string): string =>
	text.charAt(0).toUpperCase() + text.slice(1);

export const joinedAnd = (parts: readonly string[]): string =>
	parts.length < 2
		? parts.join("")
		: `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

const keptText = ({ isKept, feltSteps }: FeelKept, reader: Reader): string =>
	isKept
		? "kept"
		: `${formatNumber(feltSteps, reader, 1)} times what a player would notice`;

/** The nearest cue to the present one with what was asked changed. Null where no load could be solved for. */
export function likeMineView(
	found: LikeMine,
	reader: Reader,
): LikeMineView | null {
	const [best] = found.variants;
	const [nearest, ...others] = best?.pairs ?? [];
	if (!best || !nearest) return null;
	const felt: readonly (readonly [Name, FeelKept])[] = [
		["mass", nearest.mass],
		["balance", nearest.balance],
		["inertia", nearest.inertia],
		["stiffness", best.stiffness],
	];
	const lost = found.cannotKeep.map((name) => KEPT_LABELS[name]);
	return {
		verdict:
			lost.length === 0
				? "Weight, balance, steadiness and give can all be kept within what a player would notice."
				: `Not to be kept together with this change: ${joinedAnd(lost)}. The nearest is below.`,
		rows: felt.map(([name, kept]) => ({
			name: capital(KEPT_LABELS[name]),
			now: say(name, kept.was, reader),
			becomes: say(name, kept.becomes, reader),
			kept: keptText(kept, reader),
		})),
		bench: benchText(nearest, reader),
		others: others.map(
			(pair) =>
				`Keeping ${joinedAnd(pair.keeps.map((name) => KEPT_LABELS[name]))}${pair.isMet ? "" : " as nearly as wood and bore let it"}: ${joinedAnd(
					(["mass", "balance", "inertia"] as const).map((name) =>
						say(name, pair[name].becomes, reader),
					),
				)}.`,
		),
		taper:
			best.taper === "stiffness-kept"
				? "The shaft is filled out or slimmed until the tip gives as before."
				: "The taper is stretched with the cue.",
		cautions: [
			...new Set(found.cautions.map((caution) => cautionText(caution, reader))),
		],
	};
}

function benchText(pair: LikeMinePair, reader: Reader): string {
	if (!(pair.metalG > 0)) return "No metal is added.";
	const fine = (mm: number) => formatLength(mm, reader, "bench");
	const station = (mm: number) => formatLength(mm, reader, "station");
	return `Put ${formatMass(pair.metalG, reader, "added")} of metal, ${station(pair.slugLengthMm)} long, into a bore of ${fine(pair.boreDiameterMm)}, ${station(pair.slugFromButtMm)} from the butt end.`;
}
