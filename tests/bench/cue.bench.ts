import { planAddedWeight } from "@/lib/build/added-weight";
import type { CueDesign } from "@/lib/cue/design";
import { inertiaAboutStationKgM2, weighCue } from "@/lib/cue/mass";
import { densityKgM3 } from "@/lib/cue/materials";
import { regionsAt } from "@/lib/cue/regions";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import { meanBeamProfileOf } from "@/lib/mechanics/mean-profile";
import { beamProfileOf } from "@/lib/mechanics/profile";
import { quickBendingSolver } from "@/lib/mechanics/quick";
import { must } from "@/lib/numerics/outcome";
import { SNOOKER_REQUEST } from "../support/designs";
import {
	denseBeam,
	denseEndMassG,
	denseFrequenciesHz,
} from "../support/reference-beam";

const GRIP_FROM_BUTT_MM = 130;
const WANTED_G = 525;
const CONTACT_MS = 1.2;

interface Figures {
	readonly massG: number;
	readonly balanceStationMm: number;
	readonly inertiaBalanceKgM2: number;
	readonly inertiaGripKgM2: number;
	readonly inertiaAxisKgM2: number;
	readonly freeHz: number;
	readonly endMassG: number;
	readonly gripDiameterMm: number;
	readonly addedG: number;
}

const solve = quickBendingSolver();

/** A new design each time, so that nothing kept from the last one helps. */
const designNo = (n: number): CueDesign =>
	must(
		designFrom({
			...SNOOKER_REQUEST,
			lengthMm: 1440 + (n % 40),
			buttDiameterMm: 28 + (n % 7) / 4,
		}),
	);

function bare(design: CueDesign): Omit<Figures, "addedG"> {
	const mass = weighCue(design);
	const bending = solve({
		profile: meanBeamProfileOf(design),
		contactTimeMs: CONTACT_MS,
	});
	const gripStationMm = design.lengthMm - GRIP_FROM_BUTT_MM;
	return {
		massG: mass.massG.value,
		balanceStationMm: mass.balanceStationMm.value,
		inertiaBalanceKgM2: mass.inertiaAboutBalanceKgM2.value,
		inertiaGripKgM2: inertiaAboutStationKgM2(mass, gripStationMm).value,
		inertiaAxisKgM2: mass.inertiaAboutAxisKgM2.value,
		freeHz: bending.freeHz.x,
		endMassG: bending.endMassG,
		gripDiameterMm: diameterAtMm(design, gripStationMm),
	};
}

const quick = (design: CueDesign): Figures => ({
	...bare(design),
	addedG: must(planAddedWeight({ design, wantedMassG: WANTED_G })).addedMassG
		.value,
});

/** Midpoint sums over some 2,000 stations, none across a break, and dense matrices; nothing shared but the section. */
function straightforward(design: CueDesign): Figures {
	const bar = beamProfileOf(design);
	let m0 = 0;
	let m1 = 0;
	let m2 = 0;
	let axis = 0;
	for (let i = 0; i + 1 < bar.breaksMm.length; i++) {
		const from = bar.breaksMm[i] as number;
		const span = (bar.breaksMm[i + 1] as number) - from;
		const count = Math.max(8, Math.ceil((2000 * span) / design.lengthMm));
		const h = span / count;
		for (let k = 0; k < count; k++) {
			const z = from + (k + 0.5) * h;
			for (const { material, moments } of regionsAt(design, z)) {
				const density = densityKgM3(design, material).value * 1e-9;
				const kg = density * moments.area * h;
				m0 += kg;
				m1 += kg * z;
				m2 += kg * z * z;
				axis += density * moments.polar * h;
			}
		}
	}
	const about = (z: number): number =>
		(m2 - 2 * z * m1 + z * z * m0 + axis / 2) * 1e-6;
	const balanceStationMm = m1 / m0;
	const gripStationMm = design.lengthMm - GRIP_FROM_BUTT_MM;
	const beam = denseBeam({ bar });
	return {
		massG: 1000 * m0,
		balanceStationMm,
		inertiaBalanceKgM2: about(balanceStationMm),
		inertiaGripKgM2: about(gripStationMm),
		inertiaAxisKgM2: axis * 1e-6,
		freeHz: denseFrequenciesHz({ beam, rigid: 2, count: 1 })[0] ?? Number.NaN,
		endMassG: denseEndMassG(beam, CONTACT_MS),
		gripDiameterMm: diameterAtMm(design, gripStationMm),
		addedG: WANTED_G - 1000 * m0,
	};
}

/** Mean time of one call in microseconds, the best of five rounds. */
function microseconds(count: number, work: (n: number) => unknown): number {
	for (let n = 0; n < Math.min(3 * count, 6000); n++) work(n);
	let best = Number.POSITIVE_INFINITY;
	for (let round = 0; round < 5; round++) {
		const start = performance.now();
		for (let n = 0; n < count; n++) work(n);
		best = Math.min(best, (1000 * (performance.now() - start)) / count);
	}
	return best;
}

export function run(): string {
	const design = designNo(3);
	const found = quick(design);
	const wanted = straightforward(design);
	const keys = Object.keys(wanted) as (keyof Figures)[];
	const lines = keys.map(
		(key) =>
			`  ${key}: ${found[key].toPrecision(6)} against ${wanted[key].toPrecision(6)}, ${(100 * (found[key] / wanted[key] - 1)).toFixed(3)} %`,
	);
	const whole = microseconds(2000, (n) => quick(designNo(n)));
	const without = microseconds(2000, (n) => bare(designNo(n)));
	const template = microseconds(2000, (n) => designNo(n));
	const weigh = microseconds(2000, (n) => weighCue(designNo(n))) - template;
	const bend =
		microseconds(2000, (n) =>
			solve({
				profile: meanBeamProfileOf(designNo(n)),
				contactTimeMs: CONTACT_MS,
			}),
		) - template;
	const slow = microseconds(2, (n) => straightforward(designNo(n)));
	const rate = (us: number): string =>
		Math.round(1e6 / us).toLocaleString("en");
	return [
		"one cue, quick against straightforward (2,000 stations, dense eigenvalues):",
		...lines,
		`straightforward: ${(slow / 1000).toFixed(0)} ms; quick: ${whole.toFixed(1)} µs; ratio ${Math.round(slow / whole).toLocaleString("en")}`,
		`whole evaluations, added weight planned, a second on one core: ${rate(whole)}`,
		`without planning where the weight goes: ${rate(without)}`,
		`of which design ${template.toFixed(1)} µs, mass ${weigh.toFixed(1)} µs, bending and end mass ${bend.toFixed(1)} µs, weight plan ${(whole - without).toFixed(1)} µs`,
	].join("\n");
}
