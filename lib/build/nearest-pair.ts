import { type Job, load } from "./load";
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
		/** What the wanted weight itself allows. */
		start: { massG: number; figure: number };
	},
): { massG: number; figure: number } {
	const naturalG = job.natural.massG.value;
	const { netG: mostG } = mostMetal(job);
	const distance = (pair: { massG: number; figure: number }) =>
		Math.hypot(
			(pair.massG - p.wantedMassG) / 10,
			(pair.figure - p.wantedFigure) / p.scale,
		);
	let best = p.start;
	const consider = (massG: number, figure: number) => {
		const pair = { massG, figure };
		if (distance(pair) < distance(best)) best = pair;
	};
	consider(
		naturalG,
		p.figure(load(job, { metal: job.metal, end: null, joint: null })),
	);
	let low = 0;
	let high = mostG;
	for (let round = 0; round < 3; round++) {
		const step = (high - low) / 8;
		for (let i = 0; i <= 8; i++) {
			const netG = low + i * step;
			if (netG > 1e-6 && netG < mostG)
				for (const figure of nearestFigures(job, netG, p))
					consider(naturalG + netG, figure);
		}
		const centre = best.massG - naturalG;
		low = Math.max(0, centre - step);
		high = Math.min(mostG, centre + step);
	}
	return best;
}

/**
 * The reachable figures nearest the wanted one, in the widest bore that holds the weight: the widest
 * makes the shortest slug and so reaches farthest both ways.
 */
function nearestFigures(
	job: Job,
	netG: number,
	p: { wantedFigure: number; figure: Figure },
): readonly number[] {
	return familiesFor(job, netG, "widest").flatMap((family) => {
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
