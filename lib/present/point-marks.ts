import type { CueDesign } from "@/lib/cue/design";
import type { Messages } from "@/lib/words/reader";
import { pointStationMm } from "./cue-view";

export type PointPlace = keyof Messages["cuePicture"]["place"];

const POINT_PLACES: Readonly<Record<string, PointPlace>> = {
	"first splice pair": "points",
	"second splice pair": "points",
	"third splice pair": "between",
	"fourth splice pair": "between",
	"front wedge": "frontWedge",
	"all-round wedges": "allRound",
};

/** Where the woods of the butt come to their points, in order from the tip; a wedge with veneers where they begin. */
export function pointMarks(
	design: CueDesign,
): readonly { readonly place: PointPlace; readonly stationMm: number }[] {
	const { base, cuts } = design.splice;
	const found = new Map<PointPlace, number>();
	for (const cut of cuts) {
		const stationMm = pointStationMm(design, cut);
		if (stationMm === null) continue;
		const part = cut.part.replace(/ veneer$/, "");
		const place = POINT_PLACES[part];
		if (place === undefined) throw new Error(`no words for the cut ${part}`);
		found.set(place, Math.min(stationMm, found.get(place) ?? stationMm));
	}
	if (base.kind === "prongs") {
		found.set("points", base.pointStationMm);
		found.set("shaftEnds", base.endStationMm);
	}
	if (base.kind === "tenon") found.set("buttWood", base.joinStationMm);
	return [...found]
		.map(([place, stationMm]) => ({ place, stationMm }))
		.sort((a, b) => a.stationMm - b.stationMm);
}
