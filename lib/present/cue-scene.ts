import type { CueDesign } from "@/lib/cue/design";
import { sleevesOf } from "@/lib/cue/layers";
import type { MaterialPoint } from "@/lib/cue/material";
import type { CuePalette } from "./cue-palette";
import { type CueGrain, lightOf, type Rings, ringsOf } from "./cue-shading";
import { acrossAtPx, type CueFrame } from "./cue-view";

/** Places in the legend. */
export const SHAFT = 0;
export const BUTT = 1;
export const FIRST_BODY = 2;

const MOST_BODIES = 254;

/** Everything about a picture that no column and no row changes, in arrays by place in the legend. */
export interface Scene {
	readonly design: CueDesign;
	readonly frame: CueFrame;
	readonly legend: readonly MaterialPoint[];
	readonly firstFlat: number;
	/** By place in the legend: ground and ring colours, six numbers each, and gloss. */
	readonly inks: Float64Array;
	readonly glosses: Float64Array;
	readonly rings: readonly (Rings | null)[];
	/** Unit normals of the flats, towards the reader and down. */
	readonly normals: Float64Array;
	/** Normal of one diagonal strip of the machine splice. */
	readonly diagonal: readonly [number, number];
	readonly light: ReturnType<typeof lightOf>;
	/** From the side: distance below the axis, mm. Unrolled: sine of the angle from the middle. */
	readonly down: Float64Array;
	/** Unrolled: cosine of that angle. */
	readonly toward: Float64Array | null;
}

const turned = (angleDeg: number): readonly [number, number] => {
	const angle = (angleDeg * Math.PI) / 180;
	return [Math.cos(angle), Math.sin(angle)];
};

/** Throws RangeError for more parts than one byte tells apart. */
export function sceneOf(p: {
	design: CueDesign;
	frame: CueFrame;
	palette: CuePalette;
	grain: CueGrain;
}): Scene {
	const { design, frame, palette, grain } = p;
	const { cuts } = design.splice;
	const { angleDeg } = frame;
	const bodies = [
		{
			part: "shaft",
			material: design.shaftWood,
			grain: grain.shaft,
			faceDeg: 0,
		},
		{ part: "butt", material: design.buttWood, grain: grain.butt, faceDeg: 0 },
		...sleevesOf(design).map(({ part, material }) => ({
			part,
			material,
			grain: null,
			faceDeg: 0,
		})),
		...cuts.map((cut) => ({
			part: cut.part,
			material: cut.wood,
			grain: cut.part.endsWith("veneer") ? null : grain.butt,
			faceDeg: cut.faceAngleDeg,
		})),
	];
	if (bodies.length > MOST_BODIES)
		throw new RangeError(
			`a picture tells ${MOST_BODIES} parts apart, got ${bodies.length}`,
		);
	const tones = bodies.map(({ material }) => palette.tones[material]);
	return {
		design,
		frame,
		legend: bodies.map(({ part, material }) => ({ part, material })),
		firstFlat: bodies.length - cuts.length,
		inks: Float64Array.from(
			tones.flatMap(({ ground, ring }) => [...ground, ...ring]),
		),
		glosses: Float64Array.from(tones.map(({ gloss }) => gloss)),
		rings: bodies.map(({ grain, faceDeg }) =>
			grain ? ringsOf(grain, faceDeg - angleDeg) : null,
		),
		normals: Float64Array.from(
			cuts.flatMap((cut) => [...turned(cut.faceAngleDeg - angleDeg)]),
		),
		diagonal: turned(45 - angleDeg),
		light: lightOf(frame.view.isUnrolled),
		...rowsOf(frame),
	};
}

function rowsOf(frame: CueFrame): Pick<Scene, "down" | "toward"> {
	const { heightPx, view, pxAcross } = frame;
	const down = new Float64Array(heightPx);
	if (!view.isUnrolled) {
		for (let j = 0; j < heightPx; j++) down[j] = acrossAtPx(frame, j + 0.5);
		return { down, toward: null };
	}
	const toward = new Float64Array(heightPx);
	for (let j = 0; j < heightPx; j++)
		[toward[j], down[j]] = turned((j + 0.5) / pxAcross - 180);
	return { down, toward };
}
