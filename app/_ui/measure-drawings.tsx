"use client";

import type { ReactNode } from "react";
import type { MeasureName } from "@/lib/forms/choices";
import styles from "./measure-drawings.module.css";
import { useReader } from "./preferences/reader";

/** How a measure is taken, or a gauge used, as a line drawing 160 by 120. */
export type DrawingName =
	| Exclude<MeasureName, "gripReadings">
	| "ring-cone"
	| "ring-paper"
	| "ring-screen";

/**
 * Mirrored for a left-handed player. There are no words in the drawing itself: what is drawn is told
 * in words where it is not seen.
 */
export function MeasureDrawing({
	name,
	left = false,
}: {
	name: DrawingName;
	left?: boolean;
}) {
	const { say } = useReader();
	return (
		<svg
			className={styles.drawing}
			viewBox="0 0 160 120"
			role="img"
			aria-label={say(`drawing.${name}`)}
		>
			<g transform={left ? "translate(160 0) scale(-1 1)" : undefined}>
				{DRAWINGS[name]}
			</g>
		</svg>
	);
}

/** A limb: an outlined tube along a path. */
const Limb = ({ d, width }: { d: string; width: number }) => (
	<>
		<path className={styles.outline} d={d} strokeWidth={width} />
		<path className={styles.filling} d={d} strokeWidth={width - 3} />
	</>
);

const Line = ({ d }: { d: string }) => <path className={styles.line} d={d} />;
const Thin = ({ d }: { d: string }) => <path className={styles.thin} d={d} />;
const Tool = ({ d }: { d: string }) => <path className={styles.tool} d={d} />;

/** What is measured: a line with an arrowhead at both ends, level or upright. */
function Span({
	from: [x1, y1],
	to: [x2, y2],
}: {
	from: readonly [number, number];
	to: readonly [number, number];
}) {
	const length = Math.hypot(x2 - x1, y2 - y1);
	const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
	const head = (x: number, y: number, way: 1 | -1) =>
		`M${x} ${y}L${x + way * 7 * ux - 4 * uy} ${y + way * 7 * uy + 4 * ux}L${x + way * 7 * ux + 4 * uy} ${y + way * 7 * uy - 4 * ux}Z`;
	return (
		<g className={styles.span}>
			<path d={`M${x1} ${y1}L${x2} ${y2}`} />
			<path className={styles.head} d={head(x1, y1, 1) + head(x2, y2, -1)} />
		</g>
	);
}

const Head = ({ x, y }: { x: number; y: number }) => (
	<ellipse className={styles.shape} cx={x} cy={y} rx="9.5" ry="11.500" />
);

/** Trunk and bent arm from the side, as two measures need it. */
const BentArm = () => (
	<>
		<Limb d="M72 46V112" width={30} />
		<Limb d="M72 30V40" width={11} />
		<Head x={74} y={17} />
		<Limb d="M72 44V80H104" width={13} />
		<Limb d="M107 79V82" width={17} />
	</>
);

/** Thumb and forefinger as a ring seen along the cue, with the rest of the hand below. */
const RingOfFingers = ({ x, y, r }: { x: number; y: number; r: number }) => (
	<>
		<Limb
			d={`M${x - 6} ${y + r + 12}C${x - r - 16} ${y + r - 2} ${x - r - 10} ${y - r - 4} ${x - 1} ${y - r - 5}`}
			width={12}
		/>
		<Limb
			d={`M${x + 12} ${y + r + 12}C${x + r + 16} ${y + r - 4} ${x + r + 10} ${y - r - 3} ${x + 3} ${y - r - 5}`}
			width={12}
		/>
		<Limb d={`M${x + 3} ${y + r + 16}L${x + 8} ${y + r + 44}`} width={32} />
	</>
);

/** Cue at address over the cloth, bridge hand and grip hand on it; the shot goes to the right. */
const Address = ({ children }: { children: ReactNode }) => (
	<>
		<path className={styles.cloth} d="M84 76H156" />
		<Limb d="M92 60 100 63 108 67" width={13} />
		<path
			className={styles.shape}
			d="M96 76 99 63Q104 56 111 56L118 57 123 65 134 72 132 76Z"
		/>
		<Thin d="M118 63 128 74M111 63 118 75" />
		<path className={styles.cue} d="M8 41 152 55.500V57.500L8 47Z" />
		<path className={styles.butt} d="M8 41 46 45V49.800L8 47Z" />
		<path
			className={styles.thinShape}
			d="M106 58C106 49 111 46 115 49 118 51 116 55 113 56Z"
		/>
		<Limb d="M34 10V40" width={13} />
		<path
			className={styles.shape}
			d="M27 38H41Q43 38 43 41V52Q43 56 39 56H29Q25 56 25 52V41Q25 38 27 38Z"
		/>
		<Thin d="M30 44H43M30 48H43M30 52H42" />
		{children}
	</>
);

const ticksAcross = [40, 58, 76, 94, 112];

const DRAWINGS: Readonly<Record<DrawingName, ReactNode>> = {
	stature: (
		<>
			<Line d="M46 4V116H140" />
			<Thin d="M46 14 40 20M46 34 40 40M46 54 40 60M46 74 40 80M46 94 40 100" />
			<Limb d="M58 72V108" width={14} />
			<Limb d="M56 111H70" width={8} />
			<Limb d="M57 46V72" width={20} />
			<Limb d="M58 46 60 66 62 80" width={8} />
			<Head x={59} y={25} />
			<Tool d="M46 7H84V13H46Z" />
			<Thin d="M84 13H122" />
			<Span from={[116, 13]} to={[116, 116]} />
		</>
	),
	armSpan: (
		<>
			<Limb d="M74 86V116M86 86V116" width={12} />
			<Limb d="M80 50V84" width={24} />
			<Limb d="M80 32V40" width={10} />
			<Limb d="M16 45H144" width={11} />
			<Head x={80} y={20} />
			<Thin d="M11 50V108M149 50V108" />
			<Span from={[11, 103]} to={[149, 103]} />
		</>
	),
	shoulderToElbow: (
		<>
			<BentArm />
			<Thin d="M72 38H40M72 87H40" />
			<Span from={[46, 38]} to={[46, 87]} />
		</>
	),
	elbowToGrip: (
		<>
			<BentArm />
			<Tool d="M105.500 62H108.500V98H105.500Z" />
			<Thin d="M65.500 82V112M107 98V112" />
			<Span from={[65.5, 107]} to={[107, 107]} />
		</>
	),
	shoulderBreadth: (
		<>
			<Limb d="M56 52V100M104 52V100" width={14} />
			<path
				className={styles.shape}
				d="M50 50Q52 42 66 40H94Q108 42 110 50L102 116H58Z"
			/>
			<Limb d="M80 30V40" width={12} />
			<Head x={80} y={19} />
			<Thin d="M52 47V64M108 47V64" />
			<circle className={styles.mark} cx="52" cy="46" r="3" />
			<circle className={styles.mark} cx="108" cy="46" r="3" />
			<Span from={[52, 60]} to={[108, 60]} />
		</>
	),
	handLength: (
		<>
			<Limb d="M76 100V120" width={28} />
			<Limb d="M62 88 46 66" width={13} />
			<Limb d="M64 66 62 34" width={11} />
			<Limb d="M73 62V20" width={11} />
			<Limb d="M82 62 83 28" width={11} />
			<Limb d="M91 68 94 44" width={10} />
			<path
				className={styles.shape}
				d="M58 66Q58 60 64 60H90Q96 60 96 66V90Q94 104 88 104H64Q58 102 56 90Z"
			/>
			<path className={styles.seam} d="M60.500 62H94" />
			<Thin d="M60 105H130M73 14.500H130" />
			<Span from={[122, 14.5]} to={[122, 105]} />
		</>
	),
	bridgeToGrip: (
		<Address>
			<Thin d="M34 58V104M113 60V104" />
			<Span from={[34, 98]} to={[113, 98]} />
		</Address>
	),
	bridgeLength: (
		<Address>
			<Thin d="M113 60V104M152 58V104" />
			<Span from={[113, 98]} to={[152, 98]} />
		</Address>
	),
	gripFromButt: (
		<Address>
			<Thin d="M8 48V104M34 58V104" />
			<Span from={[8, 98]} to={[34, 98]} />
		</Address>
	),
	cueInHand: (
		<>
			<path className={styles.cue} d="M8 42 152 47.500V50.500L8 55Z" />
			<path className={styles.butt} d="M8 42 46 43.500V54L8 55Z" />
			<Tool d="M30 40H38V57H30ZM110 43H117V54H110Z" />
			<Thin d="M8 56V104M152 51V104" />
			<Span from={[8, 98]} to={[152, 98]} />
		</>
	),
	"ring-cone": (
		<>
			<path className={styles.wood} d="M10 62 150 32V88L10 68Z" />
			{ticksAcross.map((x) => (
				<Thin key={x} d={`M${x} ${55.6 - (x - 40) * 0.214}V${64}`} />
			))}
			<Limb d="M84 96C68 86 70 40 84 37" width={12} />
			<Limb d="M98 96C108 82 104 40 90 37" width={12} />
			<Limb d="M92 102 96 130" width={30} />
			<Span from={[87, 46]} to={[87, 78]} />
		</>
	),
	"ring-paper": (
		<>
			<path className={styles.paper} d="M22 6H138V116H22Z" />
			<circle className={styles.ink} cx="46" cy="28" r="15" />
			<circle className={styles.ink} cx="46" cy="66" r="17" />
			<circle className={styles.ink} cx="122" cy="26" r="11" />
			<path
				className={styles.thin}
				d="M30 106H70M30 102V106M40 102V106M50 102V106M60 102V106M70 102V106"
			/>
			<RingOfFingers x={92} y={52} r={20} />
			<circle className={styles.inkBold} cx="92" cy="52" r="19" />
			<Span from={[73, 52]} to={[111, 52]} />
		</>
	),
	"ring-screen": (
		<>
			<path
				className={styles.paper}
				d="M10 14Q10 8 16 8H144Q150 8 150 14V98Q150 104 144 104H16Q10 104 10 98Z"
			/>
			<path
				className={styles.card}
				d="M20 40Q20 36 24 36H66Q70 36 70 40V62Q70 66 66 66H24Q20 66 20 62Z"
			/>
			<Thin d="M20 46H70" />
			<RingOfFingers x={110} y={50} r={18} />
			<circle className={styles.inkBold} cx="110" cy="50" r="17" />
			<Span from={[93, 50]} to={[127, 50]} />
		</>
	),
};
