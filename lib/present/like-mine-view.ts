import type {
	FeelKept,
	LikeMine,
	LikeMinePair,
} from "@/lib/advice/like-mine-advice";
import type { Reader } from "@/lib/words/reader";
import { formatMeasure } from "./criterion-words";
import { formatLength, formatMass, formatNumber } from "./figures";
import { capital, joinedAnd } from "./lists";
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

const keptName = (name: Name, { say }: Reader): string =>
	say(`likeMine.kept.${name}`);

const CRITERION_OF = {
	mass: "weight",
	balance: "balance",
	inertia: "steadiness",
	stiffness: "stiffness",
} as const;

const measure = (name: Name, value: number, reader: Reader): string =>
	formatMeasure(CRITERION_OF[name], value, reader);

const keptText = ({ isKept, feltSteps }: FeelKept, reader: Reader): string =>
	isKept
		? reader.say("likeMine.isKept")
		: reader.say("likeMine.felt", {
				steps: formatNumber(feltSteps, reader, 1),
			});

/** The nearest cue to the present one with what was asked changed. Null where no load could be solved for. */
export function likeMineView(
	found: LikeMine,
	reader: Reader,
): LikeMineView | null {
	const { say } = reader;
	const [best] = found.variants;
	const [nearest, ...others] = best?.pairs ?? [];
	if (!best || !nearest) return null;
	const felt: readonly (readonly [Name, FeelKept])[] = [
		["mass", nearest.mass],
		["balance", nearest.balance],
		["inertia", nearest.inertia],
		["stiffness", best.stiffness],
	];
	const lost = found.cannotKeep.map((name) => keptName(name, reader));
	return {
		verdict:
			lost.length === 0
				? say("likeMine.allKept")
				: say("likeMine.lost", { lost: joinedAnd(lost, reader) }),
		rows: felt.map(([name, kept]) => ({
			name: capital(keptName(name, reader)),
			now: measure(name, kept.was, reader),
			becomes: measure(name, kept.becomes, reader),
			kept: keptText(kept, reader),
		})),
		bench: benchText(nearest, reader),
		others: others.map((pair) =>
			say("likeMine.other", {
				kept: joinedAnd(
					pair.keeps.map((name) => keptName(name, reader)),
					reader,
				),
				met: pair.isMet ? "yes" : "no",
				figures: joinedAnd(
					(["mass", "balance", "inertia"] as const).map((name) =>
						measure(name, pair[name].becomes, reader),
					),
					reader,
				),
			}),
		),
		taper:
			best.taper === "stiffness-kept"
				? say("likeMine.filled")
				: say("likeMine.stretched"),
		cautions: [
			...new Set(found.cautions.map((caution) => cautionText(caution, reader))),
		],
	};
}

function benchText(pair: LikeMinePair, reader: Reader): string {
	if (!(pair.metalG > 0)) return reader.say("likeMine.noMetal");
	const fine = (mm: number) => formatLength(mm, reader, "bench");
	const station = (mm: number) => formatLength(mm, reader, "station");
	return reader.say("likeMine.bench", {
		metal: formatMass(pair.metalG, reader, "added"),
		length: station(pair.slugLengthMm),
		bore: fine(pair.boreDiameterMm),
		place: station(pair.slugFromButtMm),
	});
}
