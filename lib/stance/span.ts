/**
 * Bridge-hand-to-grip-hand span from arm links and where the shoulders are. x runs along the shot,
 * y across, z up from the cloth. The grip shoulder, elbow and hand stand in the vertical plane of the
 * cue; the shoulder line leaves it at the yaw angle. All lengths mm, angles deg.
 */
export interface SpanInputs {
	readonly upperArmMm: number;
	readonly forearmMm: number;
	/** Elbow to the groove of the bridge hand. */
	readonly bridgeForearmMm: number;
	readonly shoulderBreadthMm: number;
	readonly bridgeShoulderHeightMm: number;
	readonly gripShoulderHeightMm: number;
	readonly yawDeg: number;
	readonly bridgeElbowDeg: number;
	readonly elevationDeg: number;
	readonly bridgeAxisHeightMm: number;
}

export interface SpanSolution {
	readonly spanMm: number;
	/** Forearm off the upright; above 0 only where the shoulder is too low to lift the elbow over the hand. */
	readonly forearmTiltDeg: number;
}

const RAD = Math.PI / 180;

/** Null when the bridge hand cannot reach the cloth from that shoulder. */
export function spanFrom(p: SpanInputs): SpanSolution | null {
	const a = p.upperArmMm;
	const b = p.bridgeForearmMm;
	const chord = Math.sqrt(
		a * a + b * b - 2 * a * b * Math.cos(p.bridgeElbowDeg * RAD),
	);
	const rise = p.gripShoulderHeightMm - p.bridgeShoulderHeightMm;
	const level = Math.sqrt(p.shoulderBreadthMm ** 2 - rise ** 2);
	const across = level * Math.sin(p.yawDeg * RAD);
	const drop = p.bridgeShoulderHeightMm - p.bridgeAxisHeightMm;
	const ahead = Math.sqrt(chord ** 2 - across ** 2 - drop ** 2);
	if (!Number.isFinite(ahead)) return null;
	const toGripShoulder = ahead + level * Math.cos(p.yawDeg * RAD);

	// The elbow's height depends on the span through the cue's slope: fixed point, slope ≪ 1.
	const slope = Math.tan(p.elevationDeg * RAD);
	let spanMm = toGripShoulder + 0.5 * a;
	let tiltDeg = 0;
	for (let step = 0; step < 60; step++) {
		const lift =
			p.bridgeAxisHeightMm +
			spanMm * slope +
			p.forearmMm -
			p.gripShoulderHeightMm;
		// Past the upper arm's length the elbow stays above the shoulder and the forearm leans outward.
		const excess = Math.max(0, lift - a);
		tiltDeg =
			Math.acos(Math.max(-1, (p.forearmMm - excess) / p.forearmMm)) / RAD;
		const behind = excess > 0 ? 0 : Math.sqrt(a * a - lift * lift);
		const next = toGripShoulder + behind;
		if (!Number.isFinite(next)) return null;
		const change = next - spanMm;
		spanMm = next;
		if (Math.abs(change) < 1e-9) break;
	}
	return { spanMm, forearmTiltDeg: tiltDeg };
}
