import { NAMES } from "@/lib/present/setting-names";
import type { GameId } from "@/lib/reference/rules";
import type { Reader } from "@/lib/words/reader";

/** A field of the catalogue's form as the page names it: "Tips 2: Height". */
export function catalogueLabel(path: string, reader: Reader): string {
	const { say } = reader;
	const [first = "", second = "", third = ""] = path.split(".");
	const place = String(Number(second) + 1);
	switch (first) {
		case "games":
			return `${NAMES.game(second as GameId, reader)}, ${say(
				third === "layouts"
					? "settings.catalogue.layouts"
					: "settings.catalogue.shaftWoods",
			)}`;
		case "ranges": {
			const what = say(
				`settings.catalogue.${second as "lengthMm" | "buttDiameterMm" | "tipDiameterMm"}`,
			);
			return say(`settings.catalogue.${third === "high" ? "high" : "low"}`, {
				what,
			});
		}
		case "tips":
			return second === ""
				? say("settings.catalogue.tips")
				: `${say("settings.catalogue.tipName")} ${place}, ${say(third === "height" ? "settings.catalogue.tipHeight" : "settings.catalogue.tipName")}`;
		case "cases":
			return second === ""
				? say("settings.catalogue.cases")
				: `${say("settings.catalogue.caseName")} ${place}, ${say(third === "longestPiece" ? "settings.catalogue.longestPiece" : "settings.catalogue.caseName")}`;
		case "endPieces":
			return `${say("settings.catalogue.endPieces")} ${place}`;
		case "buttWoods":
		case "splices":
		case "taperShapes":
		case "ferruleMetals":
		case "jointMetals":
		case "veneerWoods":
			return say(`settings.catalogue.${first}`);
		default:
			return path;
	}
}
