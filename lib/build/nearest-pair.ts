import type { Job } from "./load";
import { type Figure, familiesFor, mostMetal } from "./placements";

/**
 * The weight and figure that can be had nearest to a wanted pair that cannot. "Near" takes 10 g of
 * weight and `scale` of the figure as equally bad: this project's judgement.
 */
export function nearestPair(
	job: Job,
	p: {
		wantedMassG: number;
		wantedFigure: number;
		figure: Figure;
		scale: number;
	},
): { massG: number; figure: number } {
	const naturalG = job.natural.massG.value;
	const { netG: mostG } = mostMetal(job);
	const naturalFigure = p.figure({
		placement: { metal: job.metal, end: null, joint: null },
		mass: job.natural,
		metalMassG: 0,
		plugMassG: 0,
		drilledOutMassG: 0,
	});
	let best = { massG: naturalG, figure: naturalFigure };
	const distance = (pair: { massG: number; figure: number }) =>
		Math.hypot(
			(pair.massG - p.wantedMassG) / 10,
			(pair.figure - p.wantedFigure) / p.scale,
		);
	const consider = (netG: number) => {
		for (const figure of nearestFigures(job, netG, p)) {
			const pair = { massG: naturalG + netG, figure };
			if (distance(pair) < distance(best)) best = pair;
		}
	};
	let low = 0;
	let high = mostG;
	for (let round = 0; round < 5; round++) {
		const step = (high - low) / 8;
		for (let i = 0; i <= 8; i++) {
			const netG = low + i * step;
			if (netG > 1e-6 && netG < mostG) consider(netG);
		}
		const centre = best.massG - naturalG;
		low = Math.max(0, centre - step);
		high = Math.min(mostG, centre + step);
	}
	return best;
}

/** For each family of placements, the reachable figure nearest the wanted one. */
function nearestFigures(
	job: Job,
	netG: number,
	p: { wantedFigure: number; figure: Figure },
): readonly number[] {
	return familiesFor(job, netG).flatMap((family) => {
		const rear = family.at(0);
		const front = family.at(1);
		if (!rear || !front) return [];
		const a = p.figure(rear);
		const b = p.figure(front);
		const inside =
			p.wantedFigure >= Math.min(a, b) && p.wantedFigure <= Math.max(a, b);
		if (inside) return [p.wantedFigure];
		return [
			Math.abs(a - p.wantedFigure) < Math.abs(b - p.wantedFigure) ? a : b,
		];
	});
}
