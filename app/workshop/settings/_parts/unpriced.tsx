import { Notice } from "@/app/_ui/notice";
import { priceRowName } from "@/lib/present/setting-names";
import type { Reader } from "@/lib/words/reader";
import type { Settings } from "@/lib/workshop/settings";
import { unpricedOf } from "@/lib/workshop/unpriced";

/** What the catalogue offers and the price list has no amount for. */
export function Unpriced({
	settings,
	reader,
}: {
	settings: Settings;
	reader: Reader;
}) {
	const unpriced = unpricedOf(settings);
	if (unpriced.length === 0) return null;
	return (
		<Notice kind="caution">
			{reader.say("settings.unpriced", {
				list: unpriced.map((row) => priceRowName(row, reader)).join("; "),
			})}
		</Notice>
	);
}
