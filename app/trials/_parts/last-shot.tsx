import { Button } from "@/app/_ui/button";
import type { ShotLine, ShotPosition } from "@/lib/trial/shots";
import type { LoggedShot } from "./pending";
import styles from "./trial.module.css";

export const LINE_LABELS: Readonly<Record<ShotLine, string>> = {
	left: "Left",
	on: "On line",
	right: "Right",
};
export const POSITION_LABELS: Readonly<Record<ShotPosition, string>> = {
	good: "Good",
	near: "Near",
	lost: "Lost",
};

/** The shot just logged: what may be added to it, and the way to take it back. */
export function LastShot({
	shot,
	name,
	onNote,
	onUndo,
}: {
	shot: LoggedShot;
	name: string;
	onNote: (notes: { line?: ShotLine; position?: ShotPosition }) => void;
	onUndo: () => void;
}) {
	return (
		<section className={styles.last} aria-label="Last shot">
			<div className={styles.lastHead}>
				<p>
					Shot {shot.shotNumber + 1}, {name}:{" "}
					<strong>{shot.isPotted ? "pot" : "miss"}</strong>
				</p>
				<Button onClick={onUndo}>Undo</Button>
			</div>
			<Marks
				legend="Line"
				labels={LINE_LABELS}
				chosen={shot.line}
				onChoose={(line) => onNote({ line })}
			/>
			<Marks
				legend="Position"
				labels={POSITION_LABELS}
				chosen={shot.position}
				onChoose={(position) => onNote({ position })}
			/>
		</section>
	);
}

/** One of three, pressed again to leave it out. */
function Marks<Mark extends string>({
	legend,
	labels,
	chosen,
	onChoose,
}: {
	legend: string;
	labels: Readonly<Record<Mark, string>>;
	chosen: Mark | undefined;
	onChoose: (mark: Mark | undefined) => void;
}) {
	return (
		<fieldset className={styles.marks}>
			<legend>{legend}</legend>
			{(Object.keys(labels) as Mark[]).map((mark) => (
				<button
					key={mark}
					type="button"
					className={styles.mark}
					aria-pressed={chosen === mark}
					onClick={() => onChoose(chosen === mark ? undefined : mark)}
				>
					{labels[mark]}
				</button>
			))}
		</fieldset>
	);
}
