import type { AsBuiltReadings } from "@/lib/build/as-built";
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

/** Sections asked of the present cue, from the butt end. */
const SECTIONS = { diameterAt300Mm: 300, diameterAt700Mm: 700 } as const;

const SAME_SECTION_MM = 1;

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
	/** What was read on the finished cue. */
	readings: AsBuiltReadings;
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
	const read = figuresRead(readings, design.lengthMm);
	const measured = PLAYER_CUE_FIGURES.filter(
		(figure) => read[figure] !== undefined,
	);
	return {
		schemaVersion: 1,
		origin: "as-built",
		...planned,
		...(Object.fromEntries(
			measured.map((figure) => [figure, read[figure]]),
		) as Partial<Record<PlayerCueFigure, number>>),
		measured,
		shaftWood: request.shaftWood,
		buttWood: request.buttWood,
		splice: request.splice,
		layout: request.layout,
		design,
	};
}

function figuresRead(
	{ stations = [], ...readings }: AsBuiltReadings,
	lengthMm: number,
): Partial<Readonly<Record<PlayerCueFigure, number>>> {
	const sections = Object.entries(SECTIONS).flatMap(([figure, fromButtMm]) => {
		const at = stations.find(
			({ stationMm }) =>
				Math.abs(lengthMm - stationMm - fromButtMm) < SAME_SECTION_MM,
		);
		return at === undefined ? [] : [[figure, at.diameterMm] as const];
	});
	return { ...readings, ...Object.fromEntries(sections) };
}
