import {
	type AddedWeightPlan,
	planAddedWeight,
} from "@/lib/build/added-weight";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { type CueMass, weighCue } from "@/lib/cue/mass";
import { designFrom } from "@/lib/cue/template";
import { accept, type Outcome, type Refusal } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { CueChoice } from "./choice";
import type { FittingInput } from "./input";
import { usualBalanceMm } from "./judgement";
import { addedMetalOf, usualBuild, withStock } from "./usual-build";
import type { WorkshopOffer } from "./workshop-offer";

export interface Build {
	readonly request: CueRequest;
	/** Without added weight. */
	readonly design: CueDesign;
	readonly natural: CueMass;
	/** The weight put in the butt, or why the wood cannot give the weight. */
	readonly plan: Outcome<AddedWeightPlan>;
	/** Woods that were set aside because they are heavier than the weight wanted. */
	readonly setAside: readonly {
		readonly wood: WoodId;
		readonly naturalMassG: number;
	}[];
}

export interface BuildNeed {
	readonly input: FittingInput;
	readonly gameId: GameId;
	readonly lengthMm: number;
	readonly buttDiameterMm: number;
	readonly tipDiameterMm: number;
	readonly massG: number;
}

/** Woods, splice and layout: the wish, else what the budget and the game usually point to. */
export function requestFor(need: BuildNeed, buttWood: WoodId): CueRequest {
	const { input, gameId } = need;
	const { wishes, workshop } = input;
	const usual = usualBuild(input, gameId);
	const request: CueRequest = {
		lengthMm: need.lengthMm,
		buttDiameterMm: need.buttDiameterMm,
		tipDiameterMm: need.tipDiameterMm,
		taperShape: wishes.taperShape ?? "even",
		shaftWood: wishes.shaftWood ?? usual.shaftWood,
		buttWood,
		splice: wishes.splice ?? usual.splice,
		layout: wishes.layout ?? usual.layout,
		ferruleMetal: wishes.ferruleMetal ?? usual.ferruleMetal,
	};
	return withStock(request, workshop);
}

function buildIn(
	need: BuildNeed,
	buttWood: WoodId,
): Outcome<Omit<Build, "setAside">> {
	const request = requestFor(need, buttWood);
	const design = designFrom(request);
	if (!design.ok) return design;
	return accept({
		request,
		design: design.value,
		natural: weighCue(design.value),
		plan: weigh(design.value, need),
	});
}

/** One cue as it was picked, with nothing left to decide. */
export function buildOf(
	choice: CueChoice,
	workshop?: WorkshopOffer,
): Outcome<Build> {
	const { wantedMassG, wantedBalanceFromButtMm } = choice;
	const request = withStock(choice.request, workshop);
	const design = designFrom(request);
	if (!design.ok) return design;
	const natural = weighCue(design.value);
	return accept({
		request,
		design: design.value,
		natural,
		plan: planAddedWeight({
			design: design.value,
			wantedMassG: wantedMassG ?? natural.massG.value,
			metal: addedMetalOf(workshop),
			...(wantedBalanceFromButtMm === null ? {} : { wantedBalanceFromButtMm }),
		}),
		setAside: [],
	});
}

/**
 * The weight goes as far back as the bench usually puts it, unless that takes the balance out of the
 * usual window: then as far forward as brings it back in, where the bore allows.
 */
function weigh(
	design: CueDesign,
	{ massG: wantedMassG, gameId, input }: BuildNeed,
): Outcome<AddedWeightPlan> {
	const metal = addedMetalOf(input.workshop);
	const plain = planAddedWeight({ design, wantedMassG, metal });
	if (!plain.ok || gameId === "carom") return plain;
	const { value } = plain.value.balanceAfterFromButtMm;
	const { min } = usualBalanceMm(design.lengthMm);
	if (value >= min || plain.value.metalMassG === 0) return plain;
	const forward = planAddedWeight({
		design,
		wantedMassG,
		metal,
		wantedBalanceFromButtMm: min,
	});
	return forward.ok ? forward : plain;
}

const tooHeavy = (refusals: readonly Refusal[]) =>
	refusals.some(({ code }) => code === "weight-below-natural");

/**
 * The build for the wanted figures. Where the customer named no butt wood, the first of the budget's
 * woods that is not already too heavy is taken; where all are, the first stays, with its refusal.
 */
export function buildFor(need: BuildNeed): Outcome<Build> {
	const { wishes } = need.input;
	const woods: readonly WoodId[] =
		wishes.buttWood === undefined
			? usualBuild(need.input, need.gameId).buttWoods
			: [wishes.buttWood];
	const setAside: { wood: WoodId; naturalMassG: number }[] = [];
	let first: Build | undefined;
	for (const wood of woods) {
		const tried = buildIn(need, wood);
		if (!tried.ok) return tried;
		const build = { ...tried.value, setAside: [...setAside] };
		if (tried.value.plan.ok || !tooHeavy(tried.value.plan.refusals))
			return accept(build);
		first ??= build;
		setAside.push({ wood, naturalMassG: tried.value.natural.massG.value });
	}
	if (first === undefined)
		throw new RangeError("buildFor: no butt wood to try");
	return accept({ ...first, setAside: [] });
}
