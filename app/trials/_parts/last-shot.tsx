import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import type { ShotLine, ShotPosition } from "@/lib/trial/shots";
import type { LoggedShot } from "./pending";
import styles from "./trial.module.css";

const LINES: readonly ShotLine[] = ["left", "on", "right"];
const POSITIONS: readonly ShotPosition[] = ["good", "near", "lost"];

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
	const { say } = useReader();
	return (
		<section className={styles.last} aria-label={say("trials.log.last")}>
			<div className={styles.lastHead}>
				<p>
					{say.rich("trials.log.lastShot", {
						shot: String(shot.shotNumber + 1),
						name,
						potted: shot.isPotted ? "yes" : "no",
						b: (outcome) => <strong>{outcome}</strong>,
					})}
				</p>
				<Button onClick={onUndo}>{say("trials.log.undo")}</Button>
			</div>
			<Marks
				legend={say("trials.log.line")}
				marks={LINES}
				labelOf={(line) => say(`trials.log.lines.${line}`)}
				chosen={shot.line}
				onChoose={(line) => onNote({ line })}
			/>
			<Marks
				legend={say("trials.log.position")}
				marks={POSITIONS}
				labelOf={(position) => say(`trials.log.positions.${position}`)}
				chosen={shot.position}
				onChoose={(position) => onNote({ position })}
			/>
		</section>
	);
}

/** One of three, pressed again to leave it out. */
function Marks<Mark extends string>({
	legend,
	marks,
	labelOf,
	chosen,
	onChoose,
}: {
	legend: string;
	marks: readonly Mark[];
	labelOf: (mark: Mark) => string;
	chosen: Mark | undefined;
	onChoose: (mark: Mark | undefined) => void;
}) {
	return (
		<fieldset className={styles.marks}>
			<legend>{legend}</legend>
			{marks.map((mark) => (
				<button
					key={mark}
					type="button"
					className={styles.mark}
					aria-pressed={chosen === mark}
					onClick={() => onChoose(chosen === mark ? undefined : mark)}
				>
					{labelOf(mark)}
				</button>
			))}
		</fieldset>
	);
}
