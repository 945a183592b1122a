import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { accept, type Outcome, refuse } from "@/lib/numerics/outcome";
import { CRITERION_COUNT } from "./criteria";
import {
	type Candidate,
	densitiesFor,
	measureLoad,
	measureShape,
	measureWoods,
	type Setting,
	tableFor,
} from "./evaluate";
import { handFromButtMm } from "./fitting-needs";
import { frontEndSolver } from "./front-end";
import type { GeometryTable } from "./geometry-table";
import { emptyLoad, type Load, weighTable } from "./loading";
import { loadTable } from "./sliding";

export interface Measured {
	readonly row: Float64Array;
	readonly load: Load;
	readonly table: GeometryTable;
	readonly endMassG: number;
}

/**
 * Evaluates single candidates by the same tables as the scan. Refuses what `designFrom` refuses,
 * "weight-out-of-bore" where the weight or the forward balance cannot be had by one slug, and
 * "not-in-price-list".
 */
export function evaluator(
	setting: Setting,
): (candidate: Candidate) => Outcome<Measured> {
	const shapeOf = shapes(setting);
	return ({ request, massG, forwardMm }) => {
		const made = shapeOf(request);
		if (!made.ok) return made;
		const { design, table, endMassG } = made.value;
		const woods = densitiesFor(request, setting);
		const load = emptyLoad();
		weighTable(table, woods, load);
		const naturalG = load.massG;
		if (massG !== null && !loadTable(table, woods, { massG, forwardMm }, load))
			return refuse({
				code: "weight-out-of-bore",
				field: "massG",
				value: massG,
				min: naturalG,
				facts: { forwardMm },
			});
		const priceMinor = setting.offering.priceMinor(request, load.metalG > 0);
		if (priceMinor === null)
			return refuse({
				code: "not-in-price-list",
				field: "buttWood",
				value: request.buttWood,
			});
		const row = new Float64Array(CRITERION_COUNT);
		measureShape(row, { request, design, endMassG, setting });
		measureWoods(row, { request, table, setting });
		measureLoad(row, {
			load,
			handMm: handFromButtMm(setting.hand, request.lengthMm),
			coreHalfWidthMm: table.coreHalfWidthMm,
			priceMinor,
		});
		return accept({ row, load, table, endMassG });
	};
}

interface ShapeMade {
	readonly design: CueDesign;
	readonly table: GeometryTable;
	readonly endMassG: number;
}

/** Tables and end masses, the last one kept: many candidates differ only in weight and balance. */
function shapes(setting: Setting): (request: CueRequest) => Outcome<ShapeMade> {
	const endMassOf = frontEndSolver();
	let last: { request: CueRequest; made: Outcome<ShapeMade> } | null = null;
	return (request) => {
		if (last && isSameShape(last.request, request)) return last.made;
		const tabled = tableFor(request, setting.hand);
		const made: Outcome<ShapeMade> = tabled.ok
			? accept({
					...tabled.value,
					endMassG: endMassOf({
						...tabled.value.design,
						shaftWood: request.shaftWood,
						densities: setting.densities,
					}),
				})
			: tabled;
		last = { request, made };
		return made;
	};
}

const isSameShape = (a: CueRequest, b: CueRequest): boolean =>
	a.lengthMm === b.lengthMm &&
	a.buttDiameterMm === b.buttDiameterMm &&
	a.tipDiameterMm === b.tipDiameterMm &&
	a.taperShape === b.taperShape &&
	a.splice === b.splice &&
	a.layout === b.layout &&
	a.shaftWood === b.shaftWood &&
	a.ferruleMetal === b.ferruleMetal &&
	a.freeTaper === b.freeTaper &&
	a.splicing === b.splicing &&
	a.fittings === b.fittings;
