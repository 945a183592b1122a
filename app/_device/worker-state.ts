/** What the page knows of the worker that opens pages without a network, for every part that shows it. */
export interface WorkerState {
	/** Null until known; `absent` where the browser or the address allows none, or while developing. */
	readonly ready: "yes" | "coming" | "absent" | null;
	/** A newer build waits to take over. */
	readonly waiting: ServiceWorker | null;
	/** The browser's offer to install the app; null where it makes none. */
	readonly install: InstallOffer | null;
}

/** `beforeinstallprompt`, which no type library has: not every browser knows it. */
export interface InstallOffer extends Event {
	readonly prompt: () => Promise<unknown>;
}

let state: WorkerState = { ready: null, waiting: null, install: null };
const listeners = new Set<() => void>();

export const workerState = (): WorkerState => state;

export function noteWorker(news: Partial<WorkerState>): void {
	state = { ...state, ...news };
	for (const listener of listeners) listener();
}

export function onWorkerState(listener: () => void): () => void {
	listeners.add(listener);
	return () => listeners.delete(listener);
}

const UNKNOWN: WorkerState = { ready: null, waiting: null, install: null };
export const unknownWorkerState = (): WorkerState => UNKNOWN;
