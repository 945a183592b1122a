import type {
	PlayerCueContent,
	PlayerCueFigure,
} from "@/lib/workshop/player-cue";
import type { Answers, FieldName } from "./fields";

/** The answer about the present cue that each figure of a player's own cue gives. */
export const PRESENT_CUE_FIELDS = {
	lengthMm: "presentLength",
	massG: "presentMass",
	buttDiameterMm: "presentButt",
	tipDiameterMm: "presentTip",
	balanceFromButtMm: "presentBalance",
	diameterAt300Mm: "presentDiameter300",
	diameterAt700Mm: "presentDiameter700",
} as const satisfies Record<PlayerCueFigure, FieldName>;

const FIGURES = Object.entries(PRESENT_CUE_FIELDS) as [
	PlayerCueFigure,
	(typeof PRESENT_CUE_FIELDS)[PlayerCueFigure],
][];

/** What is said about the cue itself, so that it says nothing of another one. */
const ABOUT_THE_CUE: readonly FieldName[] = [
	...Object.values(PRESENT_CUE_FIELDS),
	"presentLikes",
	"presentDislikes",
];

/** As it would be typed: to 0.1 mm and 0.1 g, diameters to 0.01 mm. */
function typed(figure: PlayerCueFigure, value: number): string {
	if (figure === "massG") return `${Math.round(value * 10) / 10} g`;
	const steps =
		figure.startsWith("diameter") || figure.endsWith("DiameterMm") ? 100 : 10;
	return `${Math.round(value * steps) / steps} mm`;
}

/** A player's own cue as answers about the present one. */
export const presentCueAnswers = (content: PlayerCueContent): Answers =>
	Object.fromEntries(
		FIGURES.flatMap(([figure, field]) => {
			const value = content[figure];
			return value === null ? [] : [[field, typed(figure, value)]];
		}),
	);

/** Answers of an earlier fitting with another present cue in them: what was said of the old one goes. */
export const withPresentCue = <T extends Record<string, unknown>>(
	answers: T,
	content: PlayerCueContent,
): T & Answers => ({
	...(Object.fromEntries(
		Object.entries(answers).filter(
			([field]) => !(ABOUT_THE_CUE as readonly string[]).includes(field),
		),
	) as T),
	...presentCueAnswers(content),
});

/** The fields that still stand as they were filled in from the cue, in the order they are asked. */
export const filledFrom = (
	answers: Answers,
	content: PlayerCueContent,
): readonly {
	readonly figure: PlayerCueFigure;
	readonly field: FieldName;
	readonly isMeasured: boolean;
}[] => {
	const filled = presentCueAnswers(content);
	return FIGURES.flatMap(([figure, field]) =>
		filled[field] !== undefined && answers[field] === filled[field]
			? [{ figure, field, isMeasured: content.measured.includes(figure) }]
			: [],
	);
};
