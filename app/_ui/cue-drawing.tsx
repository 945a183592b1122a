import type { Reader } from "@/lib/words/reader";
import styles from "./cue-drawing.module.css";

const STATIONS = ["measure", "decide", "build"] as const;

/** The way from player to bench, drawn along a cue from tip to butt. */
export function CueDrawing({ reader: { say } }: { reader: Reader }) {
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
				{STATIONS.map((station) => (
					<li key={station}>
						<h2>{say(`home.${station}.name`)}</h2>
						<p>{say(`home.${station}.text`)}</p>
					</li>
				))}
			</ol>
		</div>
	);
}
