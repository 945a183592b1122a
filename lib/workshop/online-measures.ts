import { advise } from "@/lib/advice/advise";
import type { Figure } from "@/lib/advice/figure";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";
import type { OnlineOffer } from "./online-choices";

/** What a customer can measure at home. Everything may be left out; none of it leaves the device. */
export interface HomeMeasures {
	readonly statureMm?: number;
	/** Wrist crease to tip of the middle finger. */
	readonly handLengthMm?: number;
	readonly presentLengthMm?: number;
	readonly presentMassG?: number;
	readonly presentButtMm?: number;
	readonly presentTipMm?: number;
}

/** A figure the measures point to, with its band and what it rests on. */
export interface Suggestion {
	readonly field: "lengthMm" | "buttDiameterMm" | "tipDiameterMm" | "massG";
	readonly figure: Figure;
}

/** Which measures have something to say on a figure. */
const TELLING: Readonly<
	Record<Suggestion["field"], readonly (keyof HomeMeasures)[]>
> = {
	lengthMm: ["statureMm", "presentLengthMm"],
	buttDiameterMm: ["handLengthMm", "presentButtMm"],
	tipDiameterMm: ["presentTipMm"],
	massG: ["presentMassG"],
};

/** Figures from the measures by the advice of a fitting, those alone that a measure given speaks to. */
export function suggestionsFrom(
	measures: HomeMeasures,
	gameId: GameId,
	{ workshop }: OnlineOffer,
): Outcome<readonly Suggestion[]> {
	const told = (Object.keys(TELLING) as Suggestion["field"][]).filter((field) =>
		TELLING[field].some((measure) => measures[measure] !== undefined),
	);
	if (told.length === 0) return accept([]);
	const advice = advise({
		player: {
			statureMm: measures.statureMm,
			handLengthMm: measures.handLengthMm,
		},
		stance: { gameId },
		presentCue: {
			lengthMm: measures.presentLengthMm,
			massG: measures.presentMassG,
			buttDiameterMm: measures.presentButtMm,
			tipDiameterMm: measures.presentTipMm,
		},
		wishes: {},
		workshop,
	});
	if (!advice.ok) return advice;
	const { length, butt, tip, massNeed } = advice.value;
	const figures: Record<Suggestion["field"], Figure> = {
		lengthMm: length,
		buttDiameterMm: butt.figure,
		tipDiameterMm: tip,
		massG: massNeed.figure,
	};
	return accept(told.map((field) => ({ field, figure: figures[field] })));
}
