import "server-only";
import { type CuePlateQuestion, cuePlate } from "@/lib/documents/cue-plate";
import { CueOverlay } from "./cue-overlay";
import styles from "./cue-picture.module.css";

/** The picture for paper: made on the server, needing nothing of the browser but to show it. */
export function CuePlate(question: CuePlateQuestion) {
	const { png, picture, viewWords, cueWords } = cuePlate(question);
	return (
		<figure className={styles.plate}>
			<div role="img" aria-label={`${viewWords} ${cueWords}`}>
				<CueOverlay
					picture={picture}
					image={`data:image/png;base64,${png.toString("base64")}`}
				/>
			</div>
			<figcaption>
				{question.reader.say("cueView.fromButt", { words: viewWords })}
			</figcaption>
		</figure>
	);
}
