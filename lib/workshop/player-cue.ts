import type {
	CueDesign,
	CueRequest,
	LayoutId,
	SpliceId,
} from "@/lib/cue/design";
import { diameterAtMm } from "@/lib/cue/taper";
import type { WoodId } from "@/lib/reference/woods";

/** Figures of a cue that a fitting asks of the present one. */
export const PLAYER_CUE_FIGURES = [
	"lengthMm",
	"massG",
	"buttDiameterMm",
	"tipDiameterMm",
	"balanceFromButtMm",
	"diameterAt300Mm",
	"diameterAt700Mm",
] as const;
export type PlayerCueFigure = (typeof PLAYER_CUE_FIGURES)[number];

/** A cue a player has, as far as it is known: figures, woods, how it is made. Plain JSON. */
export interface PlayerCueContent
	extends Readonly<Record<PlayerCueFigure, number | null>> {
	readonly schemaVersion: 1;
	/** `as-built`: handed over by this workshop; `noted`: written down. */
	readonly origin: "as-built" | "noted";
	/** Which figures were read on the cue itself; the others are those it was made to. */
	readonly measured: readonly PlayerCueFigure[];
	readonly shaftWood: WoodId | null;
	readonly buttWood: WoodId | null;
	readonly splice: SpliceId | null;
	readonly layout: LayoutId | null;
	/** As designed; null where it was not built here. */
	readonly design: CueDesign | null;
}

/** What the workshop read on the finished cue; a figure that was not read is left out. */
export type FinishedReadings = Partial<
	Readonly<Record<PlayerCueFigure, number>>
>;

/** Sections asked of the present cue, from the butt end. */
const SECTIONS = { diameterAt300Mm: 300, diameterAt700Mm: 700 } as const;

/** The built cue as its player has it from now on: figures as read, the others as it was made to. */
export function asBuiltCue({
	build: { request, design, targets },
	readings,
}: {
	build: {
		readonly request: CueRequest;
		readonly design: CueDesign;
		readonly targets: Readonly<
			Record<
				"length" | "mass" | "butt" | "tip" | "balance",
				{ readonly value: number }
			>
		>;
	};
	readings: FinishedReadings;
}): PlayerCueContent {
	const section = (fromButtMm: number) =>
		diameterAtMm(design, design.lengthMm - fromButtMm);
	const planned: Readonly<Record<PlayerCueFigure, number>> = {
		lengthMm: targets.length.value,
		massG: targets.mass.value,
		buttDiameterMm: targets.butt.value,
		tipDiameterMm: targets.tip.value,
		balanceFromButtMm: targets.balance.value,
		diameterAt300Mm: section(SECTIONS.diameterAt300Mm),
		diameterAt700Mm: section(SECTIONS.diameterAt700Mm),
	};
	const measured = PLAYER_CUE_FIGURES.filter(
		(figure) => readings[figure] !== undefined,
	);
	return {
		schemaVersion: 1,
		origin: "as-built",
		...planned,
		...(Object.fromEntries(
			measured.map((figure) => [figure, readings[figure]]),
		) as Partial<Record<PlayerCueFigure, number>>),
		measured,
		shaftWood: request.shaftWood,
		buttWood: request.buttWood,
		splice: request.splice,
		layout: request.layout,
		design,
	};
}
