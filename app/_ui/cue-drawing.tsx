import styles from "./cue-drawing.module.css";

const STATIONS = [
	{
		name: "Measure",
		text: "Height, the ring of thumb and forefinger, the stance. What is left out is estimated, and says so.",
	},
	{
		name: "Decide",
		text: "Move a wish and see what it costs: weight, balance, reach, deflection.",
	},
	{
		name: "Build",
		text: "Diameters at stations, woods, the weight to add and where, on one sheet.",
	},
] as const;

/** The way from player to bench, drawn along a cue from tip to butt. */
export function CueDrawing() {
	return (
		<div className={styles.way}>
			<svg
				className={styles.cue}
				viewBox="0 0 1450 40"
				preserveAspectRatio="none"
				aria-hidden="true"
			>
				<path className={styles.ash} d="M22 14 1450 4v32L22 26z" />
				<path className={styles.tip} d="M8 15h8v10H8q-8-5 0-10z" />
				<path className={styles.ferrule} d="M16 14.4h10v11.2H16z" />
				<path
					className={styles.wood}
					d="M1450 4v32L1130 34q-150-7-190-10 60-3 110-4-110-2-180-3.500 90-3 260-10.500z"
				/>
				<path className={styles.ferrule} d="M1444 4h6v32h-6z" />
			</svg>
			<ol className={styles.stations}>
				{STATIONS.map(({ name, text }) => (
					<li key={name}>
						<h2>{name}</h2>
						<p>{text}</p>
					</li>
				))}
			</ol>
		</div>
	);
}
