import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { designFrom } from "@/lib/cue/template";
import { type Axes, loadCount } from "./axes";
import { CRITERION_COUNT } from "./criteria";
import {
	densitiesFor,
	longestPieceMm,
	measureLoad,
	measureShape,
	measureWoods,
	naturalSdG,
	type Setting,
	TABLE_WOODS,
} from "./evaluate";
import { handFromButtMm } from "./fitting-needs";
import { frontEndSolver } from "./front-end";
import { type GeometryTable, geometryTable } from "./geometry-table";
import { withJoint } from "./joint-table";
import { type HardLimits, naturalMeetsWish } from "./limits";
import {
	copyLoad,
	emptyLoad,
	NEGLIGIBLE_G,
	placeRear,
	rearMoment,
	usualSlug,
	weighTable,
} from "./loading";
import { placeForMoment, slidesOf } from "./sliding";

/** Called with the place in the scan's order and the measures of every cue that can be built; the row is reused. */
export type Visit = (index: number, row: Float64Array) => void;

/** Tables of shapes without joints, to be kept from one scan to the next. */
export type ShapeTables = Map<string, GeometryTable>;

/**
 * Evaluates every combination of the axes by the full cue, fit and shot models, factorised: the wood
 * of a shape is integrated once, its joint put in, its woods weighed, its slugs solved from the bores'
 * cumulative sums. Returns how many were within the hard limits and could be built; each is visited.
 */
export function scan(p: {
	axes: Axes;
	setting: Setting;
	limits: HardLimits;
	visit: Visit;
	/** Ends the scan at the shape that brings so many. */
	enough?: number;
	/** Shapes tabulated before: looked up, and added to. Of one setting's densities and any weights and woods. */
	tables?: ShapeTables;
}): number {
	const { axes, setting, limits, tables } = p;
	const { enough = Number.POSITIVE_INFINITY } = p;
	const row = new Float64Array(CRITERION_COUNT);
	const endMassOf = frontEndSolver();
	const perWood = loadCount(axes);
	const perLayout = perWood * axes.buttWoods.length * axes.shaftWoods.length;
	const perSplice = perLayout * axes.layouts.length;
	const loads = loadScan({ ...p, row });
	let built = 0;
	let index = 0;
	for (const base of shapesOf(axes)) {
		const { lengthMm } = base;
		const allowed =
			lengthMm >= limits.lengthMinMm && base.tipDiameterMm <= limits.tipMaxMm;
		const handMm = handFromButtMm(setting.hand, lengthMm);
		const endMasses: (number | undefined)[] = [];
		let front: CueDesign | null = null;
		for (const splice of axes.splices) {
			const start = index;
			index += perSplice;
			if (!allowed) continue;
			const plain = designFrom({ ...base, splice, layout: "one-piece" });
			if (!plain.ok) continue;
			const design = plain.value;
			front ??= design;
			const fronted = front;
			// Of the shape's front alone, so one for all splices; only where a cue of the wood can be built.
			const endMassAt = (s: number): number => {
				endMasses[s] ??= endMassOf({
					...fronted,
					shaftWood: axes.shaftWoods[s] as CueRequest["shaftWood"],
					densities: setting.densities,
				});
				return endMasses[s];
			};
			const clampStationMm = lengthMm - handMm;
			const key = `${lengthMm} ${base.buttDiameterMm} ${base.tipDiameterMm} ${base.taperShape} ${splice} ${clampStationMm}`;
			const bare =
				tables?.get(key) ?? geometryTable({ design, clampStationMm });
			tables?.set(key, bare);
			for (let k = 0; k < axes.layouts.length; k++) {
				const layout = axes.layouts[k] as CueRequest["layout"];
				const request = { ...base, splice, layout };
				const table = jointed({ request, design, bare });
				if (!table) continue;
				built += loads({
					request,
					design,
					table,
					endMassAt,
					handMm,
					index: start + k * perLayout,
				});
				if (built >= enough) return built;
			}
		}
	}
	return built;
}

/** Every length, butt, tip and taper in the scan's order, with the woods and layout tables are made of. */
function* shapesOf(axes: Axes): Generator<CueRequest> {
	for (const lengthMm of axes.lengthMm)
		for (const buttDiameterMm of axes.buttDiameterMm)
			for (const tipDiameterMm of axes.tipDiameterMm)
				for (const taperShape of axes.taperShapes)
					yield {
						lengthMm,
						buttDiameterMm,
						tipDiameterMm,
						taperShape,
						...TABLE_WOODS,
						splice: "plain",
						layout: "one-piece",
						ferruleMetal: axes.ferruleMetal,
					};
}

function jointed(p: {
	request: CueRequest;
	design: CueDesign;
	bare: GeometryTable;
}): GeometryTable | null {
	if (p.request.layout === "one-piece") return p.bare;
	const made = designFrom(p.request);
	if (!made.ok || !made.value.joint) return null;
	return withJoint({
		plain: p.bare,
		design: p.design,
		joint: made.value.joint,
	});
}

interface ShapeAt {
	readonly request: CueRequest;
	readonly design: CueDesign;
	readonly table: GeometryTable;
	/** By the place of the shaft wood. */
	readonly endMassAt: (s: number) => number;
	readonly handMm: number;
	/** Of the first load of the first woods. */
	readonly index: number;
}

/** Woods, weights and balances of one shape. */
function loadScan(p: {
	axes: Axes;
	setting: Setting;
	limits: HardLimits;
	visit: Visit;
	row: Float64Array;
}): (at: ShapeAt) => number {
	const { axes, setting, limits, visit, row } = p;
	const { offering } = setting;
	const perWood = loadCount(axes);
	const natural = emptyLoad();
	const load = emptyLoad();
	return ({ request: shape, design, table, endMassAt, handMm, index }) => {
		if (longestPieceMm(shape) > limits.pieceMaxMm) return 0;
		const { coreHalfWidthMm, bores } = table;
		let built = 0;
		/** What shape and woods decide: filled in when the first cue of theirs is told. */
		let measuringShape: (() => void) | null = null;
		let measuringWoods: (() => void) | null = null;
		const tell = (place: number, priceMinor: number): void => {
			measuringShape?.();
			measuringShape = null;
			measuringWoods?.();
			measuringWoods = null;
			measureLoad(row, { load, handMm, coreHalfWidthMm, priceMinor });
			built++;
			visit(place, row);
		};
		let first = index - perWood;
		for (let s = 0; s < axes.shaftWoods.length; s++) {
			const shaftWood = axes.shaftWoods[s] as CueRequest["shaftWood"];
			measuringShape = () =>
				measureShape(row, {
					request: shape,
					design,
					endMassG: endMassAt(s),
					setting,
				});
			for (const buttWood of axes.buttWoods) {
				first += perWood;
				const request = { ...shape, shaftWood, buttWood };
				const bare = offering.priceMinor(request, false);
				const weighted = offering.priceMinor(request, true);
				if (bare === null || weighted === null) continue;
				const d = densitiesFor(request, setting);
				weighTable(table, d, natural);
				measuringWoods = () => measureWoods(row, { request, table, setting });
				if (
					bare <= limits.priceMaxMinor &&
					natural.massG <= limits.massMaxG &&
					naturalMeetsWish(
						natural.massG,
						naturalSdG(table, request, setting),
						limits.wishedMassG,
					)
				) {
					copyLoad(natural, load);
					tell(first, bare);
				}
				if (weighted > limits.priceMaxMinor) continue;
				for (let m = 0; m < axes.massG.length; m++) {
					const massG = axes.massG[m] as number;
					const netG = massG - natural.massG;
					if (netG < NEGLIGIBLE_G || massG > limits.massMaxG) continue;
					const usual = usualSlug(bores, d, netG);
					if (!usual) continue;
					const slot = first + 1 + m * axes.forwardMm.length;
					const rear = rearMoment(usual, d);
					let slides: ReturnType<typeof slidesOf> | null = null;
					for (let f = 0; f < axes.forwardMm.length; f++) {
						const forwardMm = axes.forwardMm[f] as number;
						copyLoad(natural, load);
						if (forwardMm === 0) placeRear(usual, d, load);
						else {
							slides ??= slidesOf(bores, d, netG);
							const moment = rear + forwardMm * massG;
							// Further forward is out of reach as well.
							if (!placeForMoment(slides, d, { netG, moment }, load)) break;
						}
						tell(slot + f, weighted);
					}
				}
			}
		}
		return built;
	};
}
