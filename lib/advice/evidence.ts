import { type Estimate, Z90 } from "@/lib/reference/estimate";
import type { Evidence } from "./figure";
import type {
	Complaint,
	FittingInput,
	LikedPart,
	PresentCue,
	WishedFigure,
} from "./input";

/**
 * A wish: the customer's own figure, which replaces every estimate. One that was taken from trials
 * replaces them too, since the trials started from the advice and weighed it (lib/trial/wish-update.ts),
 * but is only as sure as they are.
 */
export function wished(
	{ wishes, wishSpread }: FittingInput,
	figure: WishedFigure,
): Evidence[] {
	const value = wishes[figure];
	if (value === undefined) return [];
	const tried = wishSpread?.[figure];
	if (tried === undefined || tried.value !== value)
		return [
			{ code: "wish", value, sd: 0, basis: "wish", sources: ["measured-here"] },
		];
	const { sd, sessions, shots } = tried;
	return [
		{
			code: "wish-from-trials",
			value,
			sd,
			basis: "wish",
			sources: ["measured-here", "project-judgement"],
			facts: { sessions, shots },
		},
	];
}

export const fromEstimate = (
	code: string,
	{ value, sd, standing, sources }: Estimate,
	facts?: Evidence["facts"],
): Evidence => ({ code, value, sd, basis: standing, sources, facts });

/** A range of the trade read as a central 90 % band. Common practice, no source. */
export function fromUsualRange(
	code: string,
	[low, high]: readonly [number, number],
): Evidence {
	return {
		code,
		value: (low + high) / 2,
		sd: (high - low) / 2 / Z90,
		basis: "common-practice",
		sources: ["common-practice"],
		facts: { low, high },
	};
}

/**
 * What the present cue says of one figure: kept where it draws no complaint, kept closely where it
 * is liked, moved a step where it is complained of. Nothing when the figure is not known.
 */
export function fromPresentCue({
	cue,
	value,
	liked,
	less,
	more,
	habitSd,
	complaintStep,
}: {
	cue: PresentCue;
	value: number | undefined;
	liked: LikedPart;
	/** The complaint that asks for less of the figure, and the one that asks for more. */
	less: Complaint;
	more: Complaint;
	habitSd: { readonly used: number; readonly liked: number };
	complaintStep: { readonly by: number; readonly sd: number };
}): Evidence[] {
	if (value === undefined) return [];
	const facts = { present: value };
	const sources = ["measured-here", "project-judgement"] as const;
	const complaints = cue.dislikes ?? [];
	const direction =
		Number(complaints.includes(more)) - Number(complaints.includes(less));
	if (direction !== 0)
		return [
			{
				code: direction < 0 ? `present-${less}` : `present-${more}`,
				value: value + direction * complaintStep.by,
				sd: complaintStep.sd,
				basis: "measured",
				sources,
				facts: { ...facts, by: complaintStep.by },
			},
		];
	const isLiked = cue.likes?.includes(liked) ?? false;
	return [
		{
			code: isLiked ? "present-liked" : "present-used",
			value,
			sd: isLiked ? habitSd.liked : habitSd.used,
			basis: "measured",
			sources,
			facts,
		},
	];
}
