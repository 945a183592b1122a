import type { CueRequest } from "@/lib/cue/design";
import type { Caution } from "@/lib/numerics/outcome";
import type { MetalId } from "@/lib/reference/metals";
import { WOODS } from "@/lib/reference/woods";

/**
 * What the bench must be told before it starts on this build: dust, turning, adhesives, lead, and
 * woods whose trade is controlled. Words and deferral to local codes are in `lib/present`.
 */
export function workshopCautions({
	request,
	metal,
}: {
	request: CueRequest;
	/** Metal of the added weight; null where none is added. */
	metal: MetalId | null;
}): Caution[] {
	const woods = [...new Set([request.shaftWood, request.buttWood])].map(
		(id) => WOODS[id],
	);
	const sensitisers = woods.filter(({ dust }) => dust?.sensitiser);
	return [
		{ code: "wood-dust" },
		...sensitisers.map(({ id }) => ({
			code: "wood-dust-sensitiser",
			facts: { wood: id },
		})),
		{ code: "turning" },
		{ code: "adhesives" },
		...(metal === "lead" ? [{ code: "lead" }] : []),
		...woods.flatMap(({ id, protection }) =>
			protection === null
				? []
				: [
						{
							code: "protected-wood",
							facts: {
								wood: id,
								appendix: protection.appendix,
								dataDate: protection.dataDate,
							},
						},
					],
		),
	];
}
