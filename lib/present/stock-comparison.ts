import { CITATIONS } from "@/lib/reference/citations";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import { densityOfStock, type StockWood } from "@/lib/workshop/stock";
import { formatDensity } from "./solid-figures";

/** "Yours: 655 ± 14 kg/m³, 4 billets weighed; published: 672 ± 67 kg/m³ (…)". */
export function stockComparison(
	wood: WoodId,
	/** Null while the entry cannot be read. */
	entry: StockWood | null,
	reader: Reader,
): string {
	const { say } = reader;
	const { value, sd, source } = WOODS[wood].density12KgM3;
	const density = entry === null ? null : densityOfStock(entry);
	const own =
		density === null
			? say("settings.stock.notWeighed")
			: density.weighedCount === 0
				? say("settings.stock.ownStated", {
						mean: formatDensity(density.kgM3, reader),
						sd: formatDensity(density.sd, reader),
					})
				: say("settings.stock.own", {
						mean: formatDensity(density.kgM3, reader),
						sd: formatDensity(density.sd, reader),
						count: density.weighedCount,
					});
	const published = say("settings.stock.published", {
		mean: formatDensity(value, reader),
		sd: formatDensity(sd, reader),
		source: CITATIONS[source].title,
	});
	return `${own}; ${published}`;
}
