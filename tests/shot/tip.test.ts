import { describe, expect, it } from "vitest";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { squirtDeg } from "@/lib/shot/deflection";
import { endMassG } from "@/lib/shot/endmass";
import { squirtEstimate, tipTradeoff } from "@/lib/shot/tip";

const endMassAt = (tipDiameterMm: number) =>
	endMassG({
		tipDiameterMm,
		shaftWood: "white-ash",
		ferruleMetal: "brass",
		ferruleLengthMm: 10,
	});
const at = (tipDiameterMm: number, gameId: GameId = "snooker") =>
	tipTradeoff({
		gameId,
		tipDiameterMm,
		endMassG: endMassAt(tipDiameterMm),
	});

describe("what a tip's width trades", () => {
	const widths = Array.from({ length: 13 }, (_, i) => 8 + i / 2);

	it("wider tips deflect more, all the way from 8 to 14 mm", () => {
		for (let i = 1; i < widths.length; i++) {
			const [narrow, wide] = [at(widths[i - 1] ?? 0), at(widths[i] ?? 0)];
			expect(wide.squirtDegAtHalf.value).toBeGreaterThan(
				narrow.squirtDegAtHalf.value,
			);
			expect(wide.endMassG.value).toBeGreaterThan(narrow.endMassG.value);
		}
	});

	it("narrow tips reach less side because the dome ends; wide ones all stop at the miscue limit", () => {
		expect(at(8).limitedBy).toBe("tip-edge");
		expect(at(8).sideSpinReachRatio).toBeCloseTo((2.5 * 4) / 8.9535, 6);
		expect(at(13).limitedBy).toBe("miscue");
		expect(at(13).sideSpinReachRatio).toBe(1.25);
		expect(at(14).sideSpinReachRatio).toBe(at(13).sideSpinReachRatio);
	});

	it("a rounder dome gives a narrow tip its reach back", () => {
		const rounder = tipTradeoff({
			gameId: "snooker",
			tipDiameterMm: 8,
			domeRadiusMm: 7,
			endMassG: endMassAt(8),
		});
		expect(rounder.limitedBy).toBe("miscue");
		expect(rounder.squirtDegAtHalf.value).toBe(at(8).squirtDegAtHalf.value);
	});

	it("a heavier ball is deflected less by the same cue", () => {
		expect(at(11, "american-pool").squirtDegAtHalf.value).toBeLessThan(
			at(11, "snooker").squirtDegAtHalf.value,
		);
		expect(at(11, "snooker").squirtDegAtHalf.value).toBeLessThan(
			at(11, "english-eight-ball").squirtDegAtHalf.value,
		);
	});

	it("every figure carries a finite band", () => {
		for (const width of widths) {
			const { squirtDegAtHalf, sideSpinReach, contactOffsetMax, ...rest } =
				at(width);
			for (const figure of [
				rest.endMassG,
				squirtDegAtHalf,
				sideSpinReach,
				contactOffsetMax,
			]) {
				expect(figure.sd).toBeGreaterThan(0);
				expect(figure.sd / figure.value).toBeLessThan(0.5);
				expect(figure.sources.length).toBeGreaterThan(0);
			}
		}
	});

	it("the deflection's spread is that of both masses moved by one deviation", () => {
		const end = at(10).endMassG;
		const ball = GAMES.snooker.cueBall.massG;
		const spread = squirtEstimate({
			offsetRatio: 0.5,
			ballMassG: ball,
			endMassG: end,
		}).sd;
		const angle = (ballMassG: number, endMassG: number): number =>
			squirtDeg({ offsetRatio: 0.5, ballMassG, endMassG });
		const byEnd =
			(angle(ball.value, end.value + end.sd) -
				angle(ball.value, end.value - end.sd)) /
			2;
		const byBall =
			(angle(ball.value + ball.sd, end.value) -
				angle(ball.value - ball.sd, end.value)) /
			2;
		expect(spread / Math.hypot(byEnd, byBall)).toBeCloseTo(1, 1);
	});
});
