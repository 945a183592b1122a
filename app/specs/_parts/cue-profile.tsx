import type { ProfileView } from "@/lib/present/sheet-view";
import styles from "./job-sheet.module.css";

const WIDTH = 1000;
const HEIGHT = 150;
const MIDDLE = 62;

/** The outline to scale along the cue, drawn thicker across so that the taper can be seen. */
export function CueProfile({ profile }: { profile: ProfileView }) {
	const { lengthMm, points, marks, stretch, summary } = profile;
	const x = (stationMm: number) => ((lengthMm - stationMm) / lengthMm) * WIDTH;
	const y = (radiusMm: number) => (radiusMm / lengthMm) * WIDTH * stretch;
	const upper = points.map(
		({ stationMm, diameterMm }) =>
			`${x(stationMm)},${MIDDLE - y(diameterMm / 2)}`,
	);
	const lower = points
		.map(
			({ stationMm, diameterMm }) =>
				`${x(stationMm)},${MIDDLE + y(diameterMm / 2)}`,
		)
		.reverse();
	return (
		<figure className={styles.profile}>
			<svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={summary}>
				<polygon
					className={styles.outline}
					points={[...upper, ...lower].join(" ")}
				/>
				{marks.map(({ stationMm, label }, i) => (
					<g key={label}>
						<line
							className={styles.mark}
							x1={x(stationMm)}
							x2={x(stationMm)}
							y1={18}
							y2={108}
						/>
						<text
							className={styles.label}
							x={x(stationMm)}
							y={i % 2 === 0 ? 128 : 146}
							textAnchor={
								stationMm < lengthMm * 0.15
									? "end"
									: stationMm > lengthMm * 0.85
										? "start"
										: "middle"
							}
						>
							{label}
						</text>
					</g>
				))}
			</svg>
			<figcaption>
				Butt end left, tip right. Lengths to scale; thickness drawn {stretch}{" "}
				times.
			</figcaption>
		</figure>
	);
}
