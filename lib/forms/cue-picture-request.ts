import { z } from "zod";
import type { CueRequest } from "@/lib/cue/design";
import { GRAIN_LIMITS } from "@/lib/cue/grain";
import { cueRequestSchema } from "./api-requests";
import { BOUNDS } from "./bounds";

const within = ([min, max]: readonly [number, number]) =>
	z.number().min(min).max(max);

const woodGrainSchema = z.strictObject({
	ringSpacingMm: within(GRAIN_LIMITS.ringSpacingMm),
	tiltDeg: within(GRAIN_LIMITS.tiltDeg).default(0),
	turnDeg: within([-360, 360]).default(0),
	phaseShare: within([0, 1]).default(0),
});

/** Body of `POST /api/v1/cue/picture`. */
export const cuePictureSchema = z.strictObject({
	cue: cueRequestSchema,
	/** Draws the added weight that brings the cue to this. */
	wantedMassG: within([BOUNDS.cueMassG.min, BOUNDS.cueMassG.max]).optional(),
	wantedBalanceFromButtMm: within([
		BOUNDS.balanceFromButtMm.min,
		BOUNDS.balanceFromButtMm.max,
	]).optional(),
	part: z.enum(["whole", "front", "butt"]).default("whole"),
	unrolled: z.boolean().default(false),
	/** Thickness drawn so many times; left out, as many as make it easy to read. */
	stretch: within([1, 12]).optional(),
	/** The meridian that faces the reader. */
	angleDeg: within([-360, 360]).default(0),
	widthPx: z.int().min(200).max(3200).default(1600),
	ink: z.enum(["colour", "grey"]).default("colour"),
	/** Rings drawn; null draws none. Left out, those of a usual billet. */
	grain: z
		.strictObject({
			shaft: woodGrainSchema.nullable().default(null),
			butt: woodGrainSchema.nullable().default(null),
		})
		.optional(),
});

export type CuePictureRequest = z.output<typeof cuePictureSchema>;

/** A value of a query as the JSON it is, else as text: "1473" is a number, "white-ash" is not. */
function queryValue(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch (error) {
		if (error instanceof SyntaxError) return text;
		throw error;
	}
}

/** The body that a query stands for: names of the cue's own request go under `cue`. */
export function pictureBodyFromQuery(query: URLSearchParams): object {
	const cue: Record<string, unknown> = {};
	const body: Record<string, unknown> = { cue };
	for (const [name, text] of query) {
		const target = name in cueRequestSchema.shape ? cue : body;
		target[name] = queryValue(text);
	}
	return body;
}

/** The query that stands for a request, to be read back by `pictureBodyFromQuery`. */
export function pictureQuery({
	cue,
	...picture
}: Omit<z.input<typeof cuePictureSchema>, "cue"> & {
	readonly cue: CueRequest;
}): string {
	const query = new URLSearchParams();
	for (const [name, value] of Object.entries({ ...cue, ...picture })) {
		if (value === undefined) continue;
		query.set(name, typeof value === "string" ? value : JSON.stringify(value));
	}
	return query.toString();
}
