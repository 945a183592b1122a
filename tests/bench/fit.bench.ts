import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { gripCircleFrom } from "@/lib/player/hand";
import type { StanceAnswers } from "@/lib/stance/answers";
import { reachFrom } from "@/lib/stance/reach";
import { standAt } from "@/lib/stance/stand";
import { optimise } from "../support/pose-optimiser";

const median = (times: number[]): number =>
	times.sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;

function medianMs(count: number, work: (n: number) => void): number {
	for (let n = 0; n < 20; n++) work(n);
	return median(
		Array.from({ length: count }, (_, n) => {
			const start = performance.now();
			work(n);
			return performance.now() - start;
		}),
	);
}

/** Segments, ring, pose, span with its spread, and window: what has to follow a slider. */
function fitPlayer(statureMm: number, answers: Partial<StanceAnswers>): void {
	const body = must(bodyFrom({ statureMm }));
	must(
		gripCircleFrom({
			readingsMm: [28, 28.5, 28.2],
			handLengthMm: body.handLengthMm,
		}),
	);
	must(reachFrom({ body, answers: { gameId: "snooker", ...answers } }));
}

export function run(): string {
	const cases: [string, number, Partial<StanceAnswers>][] = [
		["full fit, predicted", 1700, {}],
		["full fit, with a measured span", 1700, { bridgeToGripMm: 1120 }],
		["full fit, small child with a step", 1040, {}],
	];
	const lines = cases.map(
		([name, base, answers]) =>
			`${name}: median ${medianMs(400, (n) => fitPlayer(base + (n % 50), answers)).toFixed(2)} ms`,
	);
	const stand = (n: number) =>
		must(
			standAt({
				body: must(bodyFrom({ statureMm: 1700 + (n % 50) })),
				answers: { gameId: "snooker" },
			}),
		);
	const stands = Array.from({ length: 50 }, (_, n) => stand(n));
	const own = medianMs(200, (n) => void stand(n));
	const optimiser = medianMs(40, (n) => {
		const at = stands[n % 50];
		if (at !== undefined) optimise(at);
	});
	return [
		...lines,
		`one pose, body included: median ${own.toFixed(3)} ms; by the general-purpose optimiser, pose alone: ${optimiser.toFixed(2)} ms; ratio ${(optimiser / own).toFixed(0)}`,
	].join("\n");
}
