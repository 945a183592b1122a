import { offsetShare, positive, share } from "./argument";

/**
 * Speed of the cue ball over the speed of the cue just before contact.
 * Symbols: M cue mass, m ball mass, m_r = m/M, x = b/R contact offset over ball radius,
 * e restitution, η share of the cue's energy left after impact.
 */

interface Masses {
	readonly cueMassG: number;
	readonly ballMassG: number;
}

const massRatio = ({ cueMassG, ballMassG }: Masses): number => {
	positive("cueMassG", cueMassG);
	positive("ballMassG", ballMassG);
	return ballMassG / cueMassG;
};

/** Centre hit, (1 + e)/(1 + m_r). Shepard 1997 P3.2 for e = 1; Alciatore TP A.30. */
export function centreHitSpeedRatio(
	p: Masses & { readonly restitutionRatio: number },
): number {
	share("restitutionRatio", p.restitutionRatio);
	return (1 + p.restitutionRatio) / (1 + massRatio(p));
}

/** Cue speed after a centre hit over the speed before it, (1 − m_r e)/(1 + m_r). TP A.30. */
export function cueSpeedKeptRatio(
	p: Masses & { readonly restitutionRatio: number },
): number {
	share("restitutionRatio", p.restitutionRatio);
	const mr = massRatio(p);
	return (1 - mr * p.restitutionRatio) / (1 + mr);
}

/** Energy left after a centre hit over the energy before it, η = (1 + m_r e²)/(1 + m_r), from TP A.30. */
export function efficiencyRatio(
	p: Masses & { readonly restitutionRatio: number },
): number {
	share("restitutionRatio", p.restitutionRatio);
	const mr = massRatio(p);
	return (1 + mr * p.restitutionRatio ** 2) / (1 + mr);
}

/** The inverse of `efficiencyRatio`, or null where the energy lost exceeds what a plastic impact loses. */
export function restitutionFromEfficiency(
	p: Masses & { readonly efficiencyRatio: number },
): number | null {
	share("efficiencyRatio", p.efficiencyRatio);
	const square = 1 - (1 - p.efficiencyRatio) * (1 + 1 / massRatio(p));
	return square < 0 ? null : Math.sqrt(square);
}

/** Both published answers for an off-centre hit. They agree at the centre and for e = 1 only. */
export interface OffsetSpeed {
	/** Kim 2022 eq. 83: (1 + e)/(1 + m_r + 5x²/2), restitution the same at every offset. */
	readonly constantRestitution: number;
	/**
	 * Alciatore TP A.30 eq. 22: energy share the same at every offset. Null where that share cannot
	 * be met: the impact would have to lose more than a plastic one does.
	 */
	readonly constantEfficiency: number | null;
}

export function offsetHitSpeedRatio(
	p: Masses & {
		readonly restitutionRatio: number;
		readonly offsetRatio: number;
	},
): OffsetSpeed {
	offsetShare("offsetRatio", p.offsetRatio);
	share("restitutionRatio", p.restitutionRatio);
	const mr = massRatio(p);
	const turning = 2.5 * p.offsetRatio ** 2;
	const inertia = 1 + mr + turning;
	// η − (1 − η)(1 + 5x²/2)/m_r of TP A.30 with η put in terms of e.
	const kept = p.restitutionRatio ** 2;
	const radicand = kept - ((1 - kept) * turning) / (1 + mr);
	return {
		constantRestitution: (1 + p.restitutionRatio) / inertia,
		constantEfficiency:
			radicand < 0 ? null : (1 + Math.sqrt(radicand)) / inertia,
	};
}

/** Offset of most spin without loss, x = √(0.4(1 + m_r)). TP A.30 eq. 12; Kim 2022. */
export const mostSpinOffsetRatio = (p: Masses): number =>
	Math.sqrt(0.4 * (1 + massRatio(p)));

/**
 * Offset beyond which the ball leaves slower than the cue follows, so the tip does not separate
 * (constant energy share). Derived from TP A.30: x² = 0.4[(1 + m_r) − (1 − η)(1 + m_r)²/m_r].
 * Null where the tip never separates.
 */
export function separationOffsetRatio(
	p: Masses & { readonly efficiencyRatio: number },
): number | null {
	share("efficiencyRatio", p.efficiencyRatio);
	const mr = massRatio(p);
	const square =
		0.4 * (1 + mr - ((1 - p.efficiencyRatio) * (1 + mr) ** 2) / mr);
	return square < 0 ? null : Math.sqrt(square);
}
