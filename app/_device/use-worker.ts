"use client";

import { useEffect, useSyncExternalStore } from "react";
import {
	type InstallOffer,
	noteWorker,
	onWorkerState,
	unknownWorkerState,
	type WorkerState,
	workerState,
} from "./worker-state";

export const useWorkerState = (): WorkerState =>
	useSyncExternalStore(onWorkerState, workerState, unknownWorkerState);

/** The page's own work comes first. */
const AFTER_MS = 1500;
/** How the kept page was made: with which units, language and theme. */
const MANNER_KEY = "kept-page-manner";

/** Registers the worker of this build and watches for the next. `build` is null while developing. */
export function useWorker(build: string | null, manner: string): void {
	useEffect(() => {
		const offer = (event: Event) => {
			// The offer is made where it is looked for, not wherever the browser thinks of it.
			event.preventDefault();
			noteWorker({ install: event as InstallOffer });
		};
		window.addEventListener("beforeinstallprompt", offer);
		return () => window.removeEventListener("beforeinstallprompt", offer);
	}, []);

	useEffect(() => {
		if (build === null || !("serviceWorker" in navigator)) {
			noteWorker({ ready: "absent" });
			return;
		}
		let watched: ServiceWorkerRegistration | null = null;
		const look = () => {
			if (document.visibilityState === "visible" && navigator.onLine)
				watched?.update().catch(() => {
					// Not reached: the next look may be.
				});
		};
		const timer = setTimeout(async () => {
			try {
				watched = await register(manner);
			} catch (error) {
				console.warn("pages will not open without a network:", error);
				noteWorker({ ready: "absent" });
			}
		}, AFTER_MS);
		document.addEventListener("visibilitychange", look);
		return () => {
			clearTimeout(timer);
			document.removeEventListener("visibilitychange", look);
		};
	}, [build, manner]);
}

async function register(manner: string): Promise<ServiceWorkerRegistration> {
	const registration = await navigator.serviceWorker.register("/worker.js", {
		updateViaCache: "none",
	});
	const follow = () => {
		const { active, waiting } = registration;
		noteWorker({
			ready: active === null ? "coming" : "yes",
			// The first one takes over by itself: there is nothing older to wait for.
			waiting: active === null ? null : waiting,
		});
	};
	registration.addEventListener("updatefound", () => {
		registration.installing?.addEventListener("statechange", follow);
	});
	registration.installing?.addEventListener("statechange", follow);
	follow();
	const { active } = registration;
	if (active !== null && localStorage.getItem(MANNER_KEY) !== manner)
		active.postMessage("keep-shell");
	localStorage.setItem(MANNER_KEY, manner);
	return registration;
}

/** Hands over to the build that waits, and opens the page anew. What was typed lies on the device. */
export function takeOver(waiting: ServiceWorker): void {
	navigator.serviceWorker.addEventListener(
		"controllerchange",
		() => window.location.reload(),
		{ once: true },
	);
	waiting.postMessage("take-over");
}
