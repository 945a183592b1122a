import type { WoodId } from "@/lib/reference/woods";
import type { Feel } from "./feel";
import type { FittingNeeds } from "./fitting-needs";
import { normalFrom, type Uniform } from "./normal";

/** One possible truth behind what was read and assumed: standard normal departures, each shared by all cues. */
export interface Draw {
	readonly density: Readonly<Partial<Record<WoodId, number>>>;
	readonly modulus: Readonly<Partial<Record<WoodId, number>>>;
	/** Of the ring, of the hand's place on the cue, of the usual overhang. */
	readonly ring: number;
	readonly hand: number;
	readonly overhang: number;
	/** Of the needs, apart from what the above carry into them. */
	readonly length: number;
	readonly mass: number;
	readonly tip: number;
	readonly inertia: number;
	readonly give: number;
	/** Of the end-mass model, the balls in use and the workshop's bill. */
	readonly endMass: number;
	readonly ball: number;
	readonly bill: number;
}

/** Draws for the given woods. The same source gives the same draws whatever is done with them. */
export function drawsFrom(p: {
	uniform: Uniform;
	count: number;
	woods: readonly WoodId[];
}): readonly Draw[] {
	const normal = normalFrom(p.uniform);
	const woods = [...new Set(p.woods)].sort();
	const each = () => Object.fromEntries(woods.map((wood) => [wood, normal()]));
	return Array.from({ length: p.count }, () => ({
		density: each(),
		modulus: each(),
		ring: normal(),
		hand: normal(),
		overhang: normal(),
		length: normal(),
		mass: normal(),
		tip: normal(),
		inertia: normal(),
		give: normal(),
		endMass: normal(),
		ball: normal(),
		bill: normal(),
	}));
}

/** Standard deviations behind the draws, and how much of the length need moves with the stance. */
export interface Spreads {
	readonly ringMm: number;
	readonly handMm: number;
	readonly overhangMm: number;
	readonly lengthShareOfReach: number;
	readonly lengthRestMm: number;
	readonly massG: number;
	readonly tipMm: number;
	/** Relative, of the feel aimed at. */
	readonly inertia: number;
	readonly give: number;
}

export function spreadsOf(needs: FittingNeeds, feel: Feel): Spreads {
	const { length, hand, reach, ringMm, massNeed, tip } = needs;
	const share =
		length.basis === "wish"
			? 0
			: (length.evidence.find(({ code }) => code === "reach")?.shareFraction ??
				0);
	const handMm = hand.stationMm.sd;
	const overhangMm = reach.gripFromButtMm.sd;
	const carried = share * Math.hypot(handMm, overhangMm);
	const present = feel.basis === "present-cue";
	const ofValue = ({ value, sd }: { value: number; sd: number }) => sd / value;
	return {
		ringMm: ringMm.sd,
		handMm,
		overhangMm,
		lengthShareOfReach: share,
		lengthRestMm: Math.sqrt(Math.max(0, length.sd ** 2 - carried ** 2)),
		massG: massNeed.figure.sd,
		tipMm: tip.sd,
		// The usual build's feel is a target as it stands; the present cue's is known only so well.
		inertia: present ? ofValue(feel.inertiaAboutGripKgM2) : 0,
		give: present ? ofValue(feel.giveMmPerN) : 0,
	};
}
