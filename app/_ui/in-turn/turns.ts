/** One piece of a page that waits to be drawn anew. */
export interface Job {
	readonly run: () => void;
	/** In sight, or nearly. */
	readonly isNear: boolean;
}

/** What is out of sight follows when nothing has been asked for this long. */
const REST_MS = 400;
/** And then one piece after another with this much room between. */
const GAP_MS = 30;

/**
 * Pieces to draw, one to a task, so that a key, a press or a frame comes in between. Those in sight go
 * first and at once; the others when the page has come to rest.
 */
export class Turns {
	readonly #waiting = new Set<Job>();
	#soon: ReturnType<typeof setTimeout> | null = null;
	#late: ReturnType<typeof setTimeout> | null = null;

	/** Returns what takes the job back. */
	add(job: Job): () => void {
		this.#waiting.add(job);
		if (job.isNear) this.#drawNear();
		this.#drawFarAfter(REST_MS);
		return () => this.#waiting.delete(job);
	}

	/** Everything that waits, now: before printing. */
	finish(): void {
		for (const job of this.#waiting) this.#run(job);
	}

	#run(job: Job): void {
		this.#waiting.delete(job);
		job.run();
	}

	#drawNear(): void {
		this.#soon ??= setTimeout(() => {
			this.#soon = null;
			const job = [...this.#waiting].find(({ isNear }) => isNear);
			if (job === undefined) return;
			try {
				this.#run(job);
			} finally {
				this.#drawNear();
			}
		}, 0);
	}

	#drawFarAfter(ms: number): void {
		if (this.#late !== null) clearTimeout(this.#late);
		this.#late = setTimeout(() => {
			this.#late = null;
			const [job] = this.#waiting;
			if (job === undefined) return;
			try {
				this.#run(job);
			} finally {
				this.#drawFarAfter(GAP_MS);
			}
		}, ms);
	}
}
