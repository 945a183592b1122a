import type { StockForm } from "@/lib/forms/settings/stock";
import { stockName } from "@/lib/present/setting-rows/stock";
import type { Reader } from "@/lib/words/reader";

const FIELDS = [
	"grade",
	"rings",
	"count",
	"label",
	"density",
	"mass",
	"volume",
	"moisture",
	"statedMean",
	"statedSd",
] as const;

/** A field of the stock's form as the page names it: "White ash, A: Billet 2, Weight". */
export function stockLabel(
	path: string,
	{ woods }: StockForm,
	reader: Reader,
): string {
	const { say } = reader;
	const parts = path.split(".");
	const entry = woods[Number(parts[1])];
	const field = FIELDS.find((name) => name === parts.at(-1));
	const named = field === undefined ? "" : say(`settings.stock.${field}`);
	if (entry === undefined) return named || path;
	const wood = stockName(entry, reader);
	const billet =
		parts[2] === "billets"
			? `, ${say("settings.stock.billet", { number: String(Number(parts[3]) + 1) })}`
			: "";
	return `${wood}${billet}, ${named}`;
}
