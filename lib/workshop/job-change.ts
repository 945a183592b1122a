import type {
	BilletDensities,
	CueRequest,
	FerruleMetalId,
	LayoutId,
	SpliceId,
	TaperShapeId,
} from "@/lib/cue/design";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import {
	type BuildContent,
	buildFromRequest,
	type JobContent,
} from "./job-content";
import type { JobExtras } from "./job-extras";
import { jobPrice } from "./job-price";
import type { Prices } from "./prices";

/** The figures and parts of a cue that a workshop changes on a job. */
export interface CueChange {
	readonly lengthMm: number;
	readonly buttDiameterMm: number;
	readonly tipDiameterMm: number;
	readonly massG: number;
	/** Null: as far back as the bench usually puts the weight. */
	readonly balanceFromButtMm: number | null;
	readonly shaftWood: WoodId;
	readonly buttWood: WoodId;
	readonly splice: SpliceId;
	readonly layout: LayoutId;
	readonly taperShape: TaperShapeId;
	readonly ferruleMetal: FerruleMetalId;
}

/** A build as the form of changes begins with it. */
export const cueOf = ({ request, targets }: BuildContent): CueChange => ({
	lengthMm: targets.length.value,
	buttDiameterMm: targets.butt.value,
	tipDiameterMm: targets.tip.value,
	massG: targets.mass.value,
	balanceFromButtMm:
		targets.balance.basis === "wish" ? targets.balance.value : null,
	shaftWood: request.shaftWood,
	buttWood: request.buttWood,
	splice: request.splice,
	layout: request.layout,
	taperShape: request.taperShape,
	ferruleMetal: request.ferruleMetal,
});

/** What a change is worked out with: the settings in force. */
export interface ChangeSettings {
	readonly prices: Prices;
	readonly densities: BilletDensities;
	readonly versions: Readonly<Record<string, number>>;
}

/**
 * A job's content with another cue or other extras, priced anew; the quote stays for the caller to
 * replace. A cue that is not changed keeps every number it has. Refusals: those of the build. What the
 * price list lacks leaves the price null.
 */
export function changedContent(p: {
	latest: JobContent;
	cue: CueChange;
	extras: JobExtras;
	settings: ChangeSettings;
}): Outcome<JobContent> {
	const { latest, cue } = p;
	const before = cueOf(latest.build);
	const isSameCue = (Object.keys(cue) as (keyof CueChange)[]).every(
		(name) => cue[name] === before[name],
	);
	if (isSameCue) return accept(withBuild(p, latest.build));
	const { massG, balanceFromButtMm, ...asked } = cue;
	const build = buildFromRequest({
		request: requestOf(latest.build.request, asked, p.settings.densities),
		gameId: latest.build.gameId,
		massG,
		balanceFromButtMm,
		hand: latest.build.hand,
		gripCircleReadingsMm: latest.build.gripCircleReadingsMm,
	});
	return build.ok ? accept(withBuild(p, build.value)) : build;
}

/** Another build in a job's content, priced by the settings in force. */
export function withBuild(
	p: { latest: JobContent; extras: JobExtras; settings: ChangeSettings },
	build: BuildContent,
): JobContent {
	const price = jobPrice({
		prices: p.settings.prices,
		build,
		extras: p.extras,
	});
	return {
		...p.latest,
		build,
		extras: p.extras,
		price: price.ok ? price.value : null,
		settingVersions: p.settings.versions,
	};
}

/** Free diameters and the places of a splice belong to the shape they were drawn for. */
function requestOf(
	before: CueRequest,
	asked: Omit<CueChange, "massG" | "balanceFromButtMm">,
	densities: BilletDensities,
): CueRequest {
	const { freeTaper, splicing, fittings, ...rest } = before;
	const isSameShape =
		asked.lengthMm === before.lengthMm &&
		asked.buttDiameterMm === before.buttDiameterMm &&
		asked.tipDiameterMm === before.tipDiameterMm &&
		asked.taperShape === before.taperShape;
	const isSameSplice = asked.splice === before.splice;
	const isSameLayout = asked.layout === before.layout;
	return {
		...rest,
		...asked,
		densities: { ...before.densities, ...densities },
		...(isSameShape && freeTaper ? { freeTaper } : {}),
		...(isSameSplice && splicing ? { splicing } : {}),
		...(isSameLayout && fittings ? { fittings } : {}),
	};
}
