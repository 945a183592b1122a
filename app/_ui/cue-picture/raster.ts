import { NATURAL_PALETTE } from "@/lib/present/cue-palette";
import { renderCue } from "@/lib/present/cue-raster";
import type {
	RasterAnswer,
	RasterAsked,
	RasterQuestion,
} from "./raster-worker";

type Rgba = Uint8ClampedArray<ArrayBuffer>;

interface Asked {
	readonly asked: RasterAsked;
	readonly done: (rgba: Rgba) => void;
}

/** One for the whole page, made with its first picture; null where the browser has none, or it broke. */
let worker: Worker | null | undefined;
let lastKey = 0;
/** Told what the worker drew, or null where it could not. */
const waiting = new Map<number, (rgba: Rgba | null) => void>();
const lines = new Set<RasterLine>();

function workerOf(): Worker | null {
	if (worker !== undefined) return worker;
	// Paper takes what stands drawn at this moment.
	window.addEventListener("beforeprint", () => {
		for (const line of lines) line.finish();
	});
	worker = null;
	if (typeof Worker === "undefined") return null;
	const made = new Worker(new URL("./raster-worker.ts", import.meta.url), {
		type: "module",
	});
	made.onmessage = ({ data: { key, rgba } }: MessageEvent<RasterAnswer>) => {
		const tell = waiting.get(key);
		waiting.delete(key);
		tell?.(rgba);
	};
	made.onerror = () => {
		// The page draws by itself from now on: slower to the hand, but drawn.
		worker = null;
		const left = [...waiting.values()];
		waiting.clear();
		for (const tell of left) tell(null);
	};
	worker = made;
	return made;
}

/**
 * A line on which one canvas has its cue drawn away from the page: one picture at a time, and of those
 * asked for meanwhile only the last.
 */
export class RasterLine {
	/** With the worker. */
	#key: number | null = null;
	#current: Asked | null = null;
	#next: Asked | null = null;

	constructor() {
		lines.add(this);
	}

	draw(asked: RasterAsked, done: (rgba: Rgba) => void): void {
		this.#next = { asked, done };
		if (this.#current === null) this.#start();
	}

	/** Draws what was asked last, here and now; nothing where that stands drawn. */
	finish(): void {
		const last = this.#next ?? this.#current;
		if (last === null) return;
		this.#drop();
		last.done(here(last.asked));
	}

	close(): void {
		this.#drop();
		lines.delete(this);
	}

	#drop(): void {
		if (this.#key !== null) waiting.delete(this.#key);
		this.#key = null;
		this.#current = null;
		this.#next = null;
	}

	#start(): void {
		const current = this.#next;
		if (current === null) return;
		const by = workerOf();
		if (by === null) {
			this.finish();
			return;
		}
		this.#next = null;
		this.#current = current;
		const key = ++lastKey;
		this.#key = key;
		waiting.set(key, (rgba) => {
			this.#key = null;
			this.#current = null;
			current.done(rgba ?? here(current.asked));
			this.#start();
		});
		by.postMessage({ key, asked: current.asked } satisfies RasterQuestion);
	}
}

const here = (asked: RasterAsked): Rgba =>
	renderCue({ ...asked, palette: NATURAL_PALETTE }).rgba;
