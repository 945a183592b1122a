import { EigenvalueDecomposition, Matrix } from "ml-matrix";

/**
 * A straightforward bending model to check the quick one against: sections at some 2,000 stations by
 * the midpoint rule, shape functions written out, dense matrices, all eigenvalues from a
 * general-purpose library, transients as closed-form sums over all modes. It shares nothing with
 * lib/mechanics but the section of the cue.
 */
export interface ReferenceBar {
	readonly lengthMm: number;
	readonly breaksMm: readonly number[];
	sectionAt(stationMm: number): {
		massPerLengthKgM: number;
		stiffnessXNm2: number;
		stiffnessYNm2: number;
	};
}

/** Shear and rotary inertia of a round wooden bar, for showing what leaving them out costs. */
export interface Thickness {
	diameterMm(stationMm: number): number;
	/** E/(κG) along the grain. */
	readonly shearRatio: number;
	readonly rotary: boolean;
}

export interface DenseBeam {
	readonly nodesMm: readonly number[];
	readonly mass: Matrix;
	readonly stiffness: Matrix;
}

export function denseBeam(p: {
	bar: ReferenceBar;
	axis?: "x" | "y";
	stations?: number;
	elements?: number;
	thickness?: Thickness;
	/** Further element ends. */
	endsMm?: readonly number[];
}): DenseBeam {
	const { bar } = p;
	const longestMm = bar.lengthMm / (p.elements ?? 60);
	const stepMm = bar.lengthMm / (p.stations ?? 2000);
	const ends = [...new Set([...bar.breaksMm, ...(p.endsMm ?? [])])].sort(
		(a, b) => a - b,
	);
	const nodesMm = [ends[0] as number];
	for (let i = 0; i + 1 < ends.length; i++) {
		const from = ends[i] as number;
		const to = ends[i + 1] as number;
		const count = Math.ceil((to - from) / longestMm);
		for (let k = 1; k <= count; k++)
			nodesMm.push(from + ((to - from) * k) / count);
	}
	const size = 2 * nodesMm.length;
	const mass = Matrix.zeros(size, size);
	const stiffness = Matrix.zeros(size, size);
	for (let e = 0; e + 1 < nodesMm.length; e++) {
		const from = nodesMm[e] as number;
		const lengthMm = (nodesMm[e + 1] as number) - from;
		const count = Math.max(8, Math.ceil(lengthMm / stepMm));
		const h = lengthMm / 1000;
		const middle = p.thickness
			? give(p.thickness, from + lengthMm / 2)
			: { perM2: 0, gyrationM2: 0 };
		// Share of an element's give that is shear: Φ = 12 EI/(κGA h²), EI/(κGA) = (E/κG)·I/A.
		const phi = (12 * middle.perM2) / (h * h);
		for (let k = 0; k < count; k++) {
			const s = (k + 0.5) / count;
			const stationMm = from + s * lengthMm;
			const section = bar.sectionAt(stationMm);
			const bending =
				p.axis === "y" ? section.stiffnessYNm2 : section.stiffnessXNm2;
			const here = p.thickness
				? give(p.thickness, stationMm)
				: { perM2: 0, gyrationM2: 0 };
			const { w, turn, curve, shear } = shapes(s, h, phi);
			const weight = h / count;
			for (let i = 0; i < 4; i++)
				for (let j = 0; j < 4; j++) {
					const [wi, wj] = [w[i] as number, w[j] as number];
					const [ti, tj] = [turn[i] as number, turn[j] as number];
					const [ci, cj] = [curve[i] as number, curve[j] as number];
					const [gi, gj] = [shear[i] as number, shear[j] as number];
					const gyration = p.thickness?.rotary ? here.gyrationM2 : 0;
					addTo(
						mass,
						2 * e + i,
						2 * e + j,
						weight * section.massPerLengthKgM * (wi * wj + gyration * ti * tj),
					);
					addTo(
						stiffness,
						2 * e + i,
						2 * e + j,
						weight *
							bending *
							(ci * cj + (phi > 0 ? (gi * gj) / here.perM2 : 0)),
					);
				}
		}
	}
	return { nodesMm, mass, stiffness };
}

/** (E/κG)·I/A and I/A of a round section, m². */
function give(
	thickness: Thickness,
	stationMm: number,
): { perM2: number; gyrationM2: number } {
	const gyrationM2 = (thickness.diameterMm(stationMm) / 4000) ** 2;
	return { perM2: thickness.shearRatio * gyrationM2, gyrationM2 };
}

/**
 * Deflection, turn of the section, its rate and the shear angle for a unit of each freedom of an
 * element of uniform Φ; Φ = 0 is the Euler–Bernoulli cubic. Friedman & Kosmatka, Comput. Struct. 47
 * (1993) 473, from memory; rigid moves and constant curvature are tested.
 */
function shapes(s: number, h: number, phi: number) {
	const d = 1 / (1 + phi);
	const w = [
		d * (1 - 3 * s ** 2 + 2 * s ** 3 + phi * (1 - s)),
		d * h * (s - 2 * s ** 2 + s ** 3 + (phi / 2) * (s - s ** 2)),
		d * (3 * s ** 2 - 2 * s ** 3 + phi * s),
		d * h * (s ** 3 - s ** 2 - (phi / 2) * (s - s ** 2)),
	];
	const turn = [
		(d * 6 * (s ** 2 - s)) / h,
		d * (1 - 4 * s + 3 * s ** 2 + phi * (1 - s)),
		(d * 6 * (s - s ** 2)) / h,
		d * (3 * s ** 2 - 2 * s + phi * s),
	];
	const curve = [
		(d * 6 * (2 * s - 1)) / h ** 2,
		(d * (6 * s - 4 - phi)) / h,
		(d * 6 * (1 - 2 * s)) / h ** 2,
		(d * (6 * s - 2 + phi)) / h,
	];
	const slope = [
		(d * (6 * s ** 2 - 6 * s - phi)) / h,
		d * (1 - 4 * s + 3 * s ** 2 + (phi / 2) * (1 - 2 * s)),
		(d * (6 * s - 6 * s ** 2 + phi)) / h,
		d * (3 * s ** 2 - 2 * s - (phi / 2) * (1 - 2 * s)),
	];
	return {
		w,
		turn,
		curve,
		shear: slope.map((value, i) => value - (turn[i] as number)),
	};
}

const addTo = (m: Matrix, i: number, j: number, value: number): void => {
	m.set(i, j, m.get(i, j) + value);
};

interface Modes {
	/** ω², ascending, rigid moves at about zero. */
	readonly squares: readonly number[];
	/** Columns of unit modal mass, one row a kept freedom. */
	readonly vectors: Matrix;
	readonly kept: readonly number[];
}

/** Square of a frequency of about 5 Hz: below every way of bending, so low modes come out to full accuracy. */
const SHIFT = (2 * Math.PI * 5) ** 2;

/**
 * The modes of a dense pencil with some freedoms held. With K + shift·M = L Lᵀ the symmetric matrix
 * L⁻¹ M L⁻ᵀ has eigenvalues 1/(ω² + shift), so the low modes stand out of rounding however short an
 * element is. Modes lost in rounding, above some 10⁶ Hz, are left out.
 */
export function denseModes(
	beam: DenseBeam,
	held: readonly number[] = [],
): Modes {
	const kept = Array.from({ length: beam.mass.rows }, (_, i) => i).filter(
		(i) => !held.includes(i),
	);
	const mass = beam.mass.selection([...kept], [...kept]);
	const shifted = beam.stiffness
		.selection([...kept], [...kept])
		.add(Matrix.mul(mass, SHIFT));
	const inverse = lowerInverse(choleskyOf(shifted));
	const standard = inverse.mmul(mass).mmul(inverse.transpose());
	const evd = new EigenvalueDecomposition(
		Matrix.add(standard, standard.transpose()).mul(0.5),
		{ assumeSymmetric: true },
	);
	const back = inverse.transpose().mmul(evd.eigenvectorMatrix);
	const top = Math.max(...evd.realEigenvalues);
	const order = evd.realEigenvalues
		.map((theta, i) => ({ theta, i }))
		.filter((one) => one.theta > 1e-13 * top)
		.sort((a, b) => b.theta - a.theta);
	const vectors = Matrix.zeros(kept.length, order.length);
	order.forEach(({ theta, i }, j) => {
		for (let row = 0; row < kept.length; row++)
			vectors.set(row, j, back.get(row, i) / Math.sqrt(theta));
	});
	return {
		squares: order.map(({ theta }) => 1 / theta - SHIFT),
		vectors,
		kept,
	};
}

function choleskyOf(m: Matrix): Matrix {
	const n = m.rows;
	const l = Matrix.zeros(n, n);
	for (let i = 0; i < n; i++)
		for (let j = 0; j <= i; j++) {
			let sum = m.get(i, j);
			for (let k = 0; k < j; k++) sum -= l.get(i, k) * l.get(j, k);
			l.set(i, j, i === j ? Math.sqrt(sum) : sum / l.get(j, j));
		}
	return l;
}

function lowerInverse(l: Matrix): Matrix {
	const n = l.rows;
	const inverse = Matrix.zeros(n, n);
	for (let j = 0; j < n; j++)
		for (let i = j; i < n; i++) {
			let sum = i === j ? 1 : 0;
			for (let k = j; k < i; k++) sum -= l.get(i, k) * inverse.get(k, j);
			inverse.set(i, j, sum / l.get(i, i));
		}
	return inverse;
}

/** Bending frequencies, the `rigid` lowest left out. */
export function denseFrequenciesHz(p: {
	beam: DenseBeam;
	rigid: number;
	count: number;
	held?: readonly number[];
}): readonly number[] {
	return denseModes(p.beam, p.held)
		.squares.slice(p.rigid, p.rigid + p.count)
		.map((square) => Math.sqrt(square) / (2 * Math.PI));
}

/**
 * End mass with the tip moving as 1 − cos(πt/τ), exact for the dense model. Of each mode with the tip
 * held, momentum Γ is left behind in the share H(ω) = (p²/2)(1 + cos ωτ)/(p² − ω²), p = π/τ.
 */
export function denseEndMassG(beam: DenseBeam, contactTimeMs: number): number {
	const tau = contactTimeMs / 1000;
	const p = Math.PI / tau;
	const size = beam.mass.rows;
	const shift = Matrix.columnVector(
		Array.from({ length: size }, (_, i) => (i % 2 === 0 ? 1 : 0)),
	);
	const momentum = beam.mass.mmul(shift);
	const wholeKg = shift.transpose().mmul(momentum).get(0, 0);
	const modes = denseModes(beam, [0]);
	let behind = 0;
	modes.squares.forEach((square, j) => {
		let gamma = 0;
		modes.kept.forEach((freedom, i) => {
			gamma += modes.vectors.get(i, j) * momentum.get(freedom, 0);
		});
		const omega = Math.sqrt(Math.max(0, square));
		behind +=
			(gamma * gamma * (p * p * (1 + Math.cos(omega * tau)))) /
			(2 * (p * p - square));
	});
	return 1000 * (wholeKg - behind);
}

/** End mass under a half-sine sideways force, exact for the dense model. */
export function densePushedEndMassG(
	beam: DenseBeam,
	contactTimeMs: number,
): number {
	const tau = contactTimeMs / 1000;
	const p = Math.PI / tau;
	const modes = denseModes(beam);
	let velocity = 0;
	modes.squares.forEach((square, j) => {
		const tip = modes.vectors.get(0, j);
		const omega = Math.sqrt(Math.max(0, square));
		velocity +=
			(tip * tip * p * (1 + Math.cos(omega * tau))) / (p * p - square);
	});
	return (1000 * 2) / p / velocity;
}
