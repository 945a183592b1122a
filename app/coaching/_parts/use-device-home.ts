"use client";

import { useCallback, useEffect, useState } from "react";
import { z } from "zod";
import {
	type Damaged,
	type KeptFitting,
	type KnownPlayers,
	knownPlayerSchema,
} from "@/app/_device/records";
import { deviceOf, deviceStore } from "@/app/_device/tools";
import type { Device } from "@/lib/forms/device-sync";

export interface DeviceHomeState {
	readonly fittings: readonly (KeptFitting & { readonly waiting: number })[];
	readonly players: KnownPlayers | null;
	/** The players came from the server just now. */
	readonly isFresh: boolean;
	readonly damaged: readonly Damaged[];
	readonly device: Device;
	/** The browser may not clear what is kept; null where it does not say. */
	readonly isLasting: boolean | null;
}

/** What lies on this device; null until it has been read, `none` where nothing can be kept. */
export function useDeviceHome(): {
	state: DeviceHomeState | "none" | null;
	reload: () => Promise<void>;
} {
	const [state, setState] = useState<DeviceHomeState | "none" | null>(null);

	const reload = useCallback(async () => {
		const store = await deviceStore();
		if (store === null) return setState("none");
		const fittings = await store.fittings();
		const counts = await store.waitingCounts();
		const [players, device, damaged, isLasting] = [
			await store.knownPlayers(),
			await deviceOf(store),
			await store.damaged(),
			(await navigator.storage?.persisted?.()) ?? null,
		];
		setState((now) => ({
			fittings: fittings.map((fitting) => ({
				...fitting,
				waiting: counts.get(fitting.id) ?? 0,
			})),
			players,
			isFresh: now !== null && now !== "none" && now.isFresh,
			damaged,
			device,
			isLasting,
		}));
	}, []);

	useEffect(() => {
		void (async () => {
			await reload();
			const players = await playersNow();
			if (players === null) return;
			await (await deviceStore())?.putKnownPlayers(players);
			setState((now) =>
				now === null || now === "none"
					? now
					: { ...now, players, isFresh: true },
			);
		})();
	}, [reload]);

	return { state, reload };
}

const answerSchema = z.object({ players: z.array(knownPlayerSchema) });

/** Null where the server does not answer. */
async function playersNow(): Promise<KnownPlayers | null> {
	if (!navigator.onLine) return null;
	try {
		const response = await fetch("/device/players", { cache: "no-store" });
		if (!response.ok) return null;
		const { players } = answerSchema.parse(await response.json());
		return { players, asOf: new Date().toISOString() };
	} catch {
		// What the device kept is shown instead, with its time.
		return null;
	}
}
