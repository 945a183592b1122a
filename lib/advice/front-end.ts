import type { CueDesign } from "@/lib/cue/design";
import { beamOf, beamScratch } from "@/lib/mechanics/beam";
import { endMassOfBeamG, impulseScratch } from "@/lib/mechanics/impulse";
import { meanBeamProfileOf } from "@/lib/mechanics/mean-profile";
import { LEATHER_CONTACT_MS } from "@/lib/shot/published";

/** Most nodes the front half needs at a coarse mesh. */
const CAPACITY = 64;
/** What lies further from the tip moves too late to matter: within 0.05 % of the end mass. */
const FRONT_MM = 850;

/**
 * Effective end mass of many cues from the transient of their front alone, with its own storage. Of one
 * caller at a time. Within 0.4 % of `endMassOfDesignG`: a coarser mesh and fewer steps.
 */
export function frontEndSolver(): (design: CueDesign) => number {
	const scratch = beamScratch(CAPACITY);
	const impulse = impulseScratch(CAPACITY);
	return (design) => {
		const whole = meanBeamProfileOf(design);
		const lengthMm = Math.min(FRONT_MM, whole.lengthMm);
		const beam = beamOf({
			profile: {
				lengthMm,
				breaksMm: [
					...whole.breaksMm.filter((station) => station < lengthMm - 0.1),
					lengthMm,
				],
				sectionAt: whole.sectionAt,
			},
			fineness: 1,
			scratch,
		});
		return endMassOfBeamG({
			beam,
			axis: "x",
			contactTimeMs: LEATHER_CONTACT_MS.value,
			scratch: impulse,
		});
	};
}
