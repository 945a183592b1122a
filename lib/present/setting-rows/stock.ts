import { formatLength, formatMass, formatNumber } from "@/lib/present/figures";
import { NAMES } from "@/lib/present/setting-names";
import { formatDensity, formatVolume } from "@/lib/present/solid-figures";
import type { Reader } from "@/lib/words/reader";
import type { Stock, StockBillet, StockWood } from "@/lib/workshop/stock";
import type { SettingRow } from "./row";

/** "Indian rosewood, A". */
export const stockName = (
	{ wood, grade }: Pick<StockWood, "wood" | "grade">,
	reader: Reader,
): string => {
	const name = NAMES.wood(wood, reader);
	return grade === ""
		? name
		: reader.say("settings.stock.entry", { wood: name, grade });
};

function billetText(billet: StockBillet, reader: Reader): string {
	const { label, moisturePct } = billet;
	const weighed =
		"densityKgM3" in billet
			? formatDensity(billet.densityKgM3, reader)
			: `${formatMass(billet.massG, reader)}, ${formatVolume(billet.volumeCm3, reader)}`;
	const figure =
		moisturePct === null
			? weighed
			: reader.say("settings.stock.billetAt", {
					figure: weighed,
					moisture: formatNumber(
						moisturePct,
						reader,
						Number.isInteger(moisturePct) ? 0 : 1,
					),
				});
	return label === ""
		? figure
		: reader.say("settings.stock.billetNamed", { label, figure });
}

/** Count, rings and every billet of each wood at hand. */
export const stockRows = ({ woods }: Stock, reader: Reader): SettingRow[] =>
	woods.flatMap((entry) => {
		const name = stockName(entry, reader);
		const key = `${entry.wood} ${entry.grade}`;
		const { say } = reader;
		const row = (part: string, label: string, value: string): SettingRow => ({
			key: `${key} ${part}`,
			label: `${name} · ${label}`,
			value,
		});
		return [
			row(
				"count",
				say("settings.stock.count"),
				formatNumber(entry.count, reader),
			),
			...(entry.ringSpacingMm === null
				? []
				: [
						row(
							"rings",
							say("settings.stock.rings"),
							formatLength(entry.ringSpacingMm, reader, "bench"),
						),
					]),
			...entry.billets.map((billet, i) =>
				row(
					`billet ${i}`,
					say("settings.stock.billet", { number: String(i + 1) }),
					billetText(billet, reader),
				),
			),
			...(entry.stated === null
				? []
				: [
						row(
							"stated",
							say("settings.stock.stated"),
							say("settings.stock.ownStated", {
								mean: formatDensity(entry.stated.kgM3, reader),
								sd: formatDensity(entry.stated.sd, reader),
							}),
						),
					]),
		];
	});
