import type { WoodId } from "@/lib/reference/woods";
import type { Advice } from "./advise";

/** What somebody saw when they chose to save: held against what is frozen. */
export interface SeenFigures {
	readonly lengthMm: number;
	readonly massG: number;
	readonly buttDiameterMm: number;
	readonly tipDiameterMm: number;
	readonly buttWood: WoodId;
}

export const seenIn = (advice: Advice): SeenFigures => ({
	lengthMm: advice.length.value,
	massG: advice.mass.value,
	buttDiameterMm: advice.butt.figure.value,
	tipDiameterMm: advice.tip.value,
	buttWood: advice.build.request.buttWood,
});

/** Far below what a bench can tell, far above what rounding on the way could add. */
const SAME = 1e-3;

export const isAsSeen = (advice: Advice, seen: SeenFigures): boolean => {
	const now = seenIn(advice);
	return (
		now.buttWood === seen.buttWood &&
		(["lengthMm", "massG", "buttDiameterMm", "tipDiameterMm"] as const).every(
			(name) => Math.abs(now[name] - seen[name]) < SAME,
		)
	);
};
