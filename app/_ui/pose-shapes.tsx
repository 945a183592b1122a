import type { Point, Shape } from "@/lib/present/pose-props";

/** To a tenth of a millimetre: server and browser may differ in a number's last bits. */
export const written = (value: number) => Math.round(value * 10) / 10;
const at = ([x, y]: Point) => `${written(x)} ${written(y)}`;

/** A tube with an outline: the same line twice, the upper one a little thinner. */
export function Tube({
	shape: { points, widthMm = 0 },
	className,
}: {
	shape: Shape;
	className?: string;
}) {
	const d = `M${points.map(at).join("L")}`;
	return (
		<g
			className={className}
			fill="none"
			strokeLinecap="round"
			strokeLinejoin="round"
		>
			<path d={d} stroke="var(--outline)" strokeWidth={written(widthMm)} />
			<path d={d} stroke="var(--fill)" strokeWidth={written(widthMm - 12)} />
		</g>
	);
}

export function Area({
	shape: { points, smooth = false },
	className,
}: {
	shape: Shape;
	className?: string;
}) {
	return (
		<path
			className={className}
			d={smooth ? rounded(points) : `M${points.map(at).join("L")}Z`}
			fill="var(--fill)"
			stroke="var(--outline)"
			strokeWidth="6"
			strokeLinejoin="round"
		/>
	);
}

export const Line = ({
	line: points,
	className,
}: {
	line: readonly Point[];
	className?: string;
}) => (
	<path className={className} d={`M${points.map(at).join("L")}`} fill="none" />
);

/** Closed Catmull-Rom curve through the points, as cubic Béziers: handles a sixth of the chord beside. */
function rounded(points: readonly Point[]): string {
	const of = (i: number) =>
		points[(i + points.length) % points.length] as Point;
	return `M${at(of(0))}${points
		.map((_, i) => {
			const [a, b, c, d] = [of(i - 1), of(i), of(i + 1), of(i + 2)];
			const first: Point = [b[0] + (c[0] - a[0]) / 6, b[1] + (c[1] - a[1]) / 6];
			const second: Point = [
				c[0] - (d[0] - b[0]) / 6,
				c[1] - (d[1] - b[1]) / 6,
			];
			return `C${at(first)} ${at(second)} ${at(c)}`;
		})
		.join("")}Z`;
}
