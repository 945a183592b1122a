import {
	type AddedWeightPlan,
	planAddedWeight,
} from "@/lib/build/added-weight";
import type { BilletDensities } from "@/lib/cue/design";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import type { BuildContent } from "./job-content";
import { densitiesSaid, type WeighedCue } from "./weighed-cue";

/**
 * The build with the metal worked out anew for the cue as it was weighed without any: what its woods
 * really weigh in place of what was expected, the wanted weight and balance as they were. Refusals: those
 * of impliedDensities, and of the added weight where the cue is too heavy already.
 */
export function replanned(
	build: BuildContent,
	weighed: WeighedCue,
	billets: BilletDensities,
): Outcome<BuildContent> {
	const said = densitiesSaid(weighed, billets);
	if (!said.ok) return said;
	const { targets, addedWeight } = build;
	const plan: Outcome<AddedWeightPlan> = planAddedWeight({
		design: {
			...weighed.design,
			densities: { ...weighed.design.densities, ...said.value.densities },
		},
		wantedMassG: targets.mass.value,
		metal: addedWeight.metal,
		...(targets.balance.basis === "wish"
			? { wantedBalanceFromButtMm: targets.balance.value }
			: {}),
	});
	if (!plan.ok) return plan;
	const { finished, cautions: _, ...added } = plan.value;
	return accept({
		...build,
		design: finished,
		naturalMassG: {
			...build.naturalMassG,
			value: said.value.massG,
			sd: 0,
			standing: "measured",
		},
		addedWeight: added,
	});
}
