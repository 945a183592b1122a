import type { Offer } from "@/lib/advice/catalogue";
import { GAME_IDS, RANGES } from "@/lib/forms/settings/catalogue";
import { formatLength } from "@/lib/present/figures";
import { NAMES } from "@/lib/present/setting-names";
import type { Reader } from "@/lib/words/reader";
import type { WorkshopCatalogue } from "@/lib/workshop/settings";
import type { SettingRow } from "./row";

/** What the workshop makes: a row a list, and one for each wood, splice, tip and case with its own figure. */
export function catalogueRows(
	c: WorkshopCatalogue,
	reader: Reader,
): SettingRow[] {
	const { say } = reader;
	const list = <Id>(
		ids: readonly Id[],
		name: (id: Id, reader: Reader) => string,
	) =>
		ids.length === 0
			? say("settings.row.none")
			: ids.map((id) => name(id, reader)).join(", ");
	const offers = <Id extends string>(
		key: "buttWoods" | "splices",
		entries: readonly Offer<Id>[],
		name: (id: Id, reader: Reader) => string,
	): SettingRow[] =>
		entries.map(({ id, tier }) => ({
			key: `${key}.${id}`,
			label: `${say(`settings.catalogue.${key}`)} · ${name(id, reader)}`,
			value: say(`settings.catalogue.tier.${tier}`),
		}));
	const row = (
		key:
			| "taperShapes"
			| "ferruleMetals"
			| "jointMetals"
			| "veneerWoods"
			| "addedMetal"
			| "endPieces",
		value: string,
	): SettingRow => ({ key, label: say(`settings.catalogue.${key}`), value });
	return [
		...GAME_IDS.flatMap((gameId): SettingRow[] => {
			const game = say("settings.catalogue.gameTitle", {
				game: NAMES.game(gameId, reader),
			});
			const { shaftWoods, layouts } = c.games[gameId];
			return [
				{
					key: `${gameId}.shaftWoods`,
					label: `${game} · ${say("settings.catalogue.shaftWoods")}`,
					value: list(shaftWoods, NAMES.wood),
				},
				{
					key: `${gameId}.layouts`,
					label: `${game} · ${say("settings.catalogue.layouts")}`,
					value: list(layouts, NAMES.layout),
				},
			];
		}),
		...offers("buttWoods", c.buttWoods, NAMES.wood),
		...offers("splices", c.splices, NAMES.splice),
		row("taperShapes", list(c.taperShapes, NAMES.taper)),
		row("veneerWoods", list(c.veneerWoods, NAMES.wood)),
		row("ferruleMetals", list(c.ferruleMetals, NAMES.metal)),
		row("jointMetals", list(c.jointMetals, NAMES.metal)),
		row("addedMetal", NAMES.metal(c.addedMetal, reader)),
		...c.tips.map(({ name, heightMm }) => ({
			key: `tips.${name}`,
			label: `${say("settings.catalogue.tips")} · ${name}`,
			value: formatLength(heightMm, reader, "bench"),
		})),
		row(
			"endPieces",
			list(c.endPiecesMm, (mm, to) => formatLength(mm, to)),
		),
		...c.cases.map(({ name, longestPieceMm }) => ({
			key: `cases.${name}`,
			label: `${say("settings.catalogue.cases")} · ${name}`,
			value: formatLength(longestPieceMm, reader, "station"),
		})),
		...RANGES.map((name) => {
			const kind = name === "lengthMm" ? "station" : "bench";
			const [low, high] = c[name];
			return {
				key: name,
				label: say(`settings.catalogue.${name}`),
				value: say("figure.signedBand", {
					low: formatLength(low, reader, kind),
					high: formatLength(high, reader, kind),
				}),
			};
		}),
	];
}
