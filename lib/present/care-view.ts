import type { MessageKey, Reader } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import type { JobExtras } from "@/lib/workshop/job-extras";
import { formatLength, formatMass } from "./figures";
import { inSentence, metalName } from "./labels";
import { cautionText } from "./notices";

export interface CareGroup {
	readonly title: string;
	readonly lines: readonly string[];
}

/**
 * How a cue is looked after, for whoever plays with it: of this cue's own tip, ferrule, joint and metal.
 * Common practice, no source, and said so beside it; no warranty, which is the workshop's to word.
 */
export function careGroups(
	{
		build,
		extras,
	}: {
		build: Pick<
			BuildContent,
			"design" | "targets" | "addedWeight" | "workshopCautions"
		>;
		extras: Pick<JobExtras, "tip">;
	},
	reader: Reader,
): CareGroup[] {
	const { say } = reader;
	const { design, targets, addedWeight } = build;
	const bench = (mm: number) => formatLength(mm, reader, "bench");
	const across = bench(targets.tip.value);
	const group = (
		id: "ferrule" | "wood" | "keep" | "joint" | "metal" | "borders" | "tip",
		lines: readonly (string | null)[],
	): CareGroup => ({
		title: say(`care.${id}.title`),
		lines: lines.filter((line) => line !== null),
	});
	const plain = (key: MessageKey & `care.${string}`) => say(key);
	const isSpliced =
		design.splice.base.kind === "prongs" || design.splice.cuts.length > 0;
	const isJointed = design.joint !== null;
	return [
		group("tip", [
			say("care.tip.what", {
				name: extras.tip ?? say("care.tip.leather"),
				across,
				high: bench(design.tip.heightMm),
				radius: bench(design.tip.domeRadiusMm),
			}),
			plain("care.tip.chalk"),
			plain("care.tip.shape"),
			say("care.tip.replace", { across }),
		]),
		group("ferrule", [
			say("care.ferrule.what", {
				metal: metalName(design.ferrule.metal, reader),
			}),
			plain("care.ferrule.never"),
			plain("care.ferrule.loose"),
		]),
		group("wood", [
			plain("care.wood.wipe"),
			plain("care.wood.sand"),
			plain("care.wood.oil"),
			isSpliced ? plain("care.wood.splice") : null,
		]),
		group("keep", [
			plain("care.keep.flat"),
			plain("care.keep.climate"),
			plain("care.keep.travel"),
		]),
		group("joint", [
			isJointed || design.endJoint !== null ? plain("care.joint.hand") : null,
			isJointed ? plain("care.joint.caps") : null,
			design.endJoint === null ? null : plain("care.joint.endPiece"),
		]),
		group("metal", [
			addedWeight.metalMassG > 0
				? say("care.metal.what", {
						mass: formatMass(addedWeight.metalMassG, reader, "added"),
						metal: inSentence.metal(addedWeight.metal, reader),
					})
				: null,
			addedWeight.metalMassG > 0 && addedWeight.metal === "lead"
				? plain("care.metal.lead")
				: null,
		]),
		group(
			"borders",
			build.workshopCautions
				.filter(({ code }) => code === "protected-wood")
				.map((caution) => cautionText(caution, reader)),
		),
	].filter(({ lines }) => lines.length > 0);
}
