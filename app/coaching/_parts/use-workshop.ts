"use client";

import { useEffect, useState } from "react";
import type { KeptWorkshop } from "@/app/_device/records";
import { deviceStore } from "@/app/_device/tools";
import type { WorkshopOffer } from "@/lib/advice/workshop-offer";

/**
 * What the workshop makes and charges, as the server last told: by the page, or by one opened since
 * this one was kept. Null until the device has been asked.
 */
export function useWorkshopKept(told: KeptWorkshop): WorkshopOffer | null {
	const [offer, setOffer] = useState<WorkshopOffer | null>(null);
	useEffect(() => {
		let isWanted = true;
		void deviceStore()
			.then(async (store) => {
				const kept = (await store?.workshop()) ?? null;
				if (kept !== null && kept.asOf > told.asOf) return kept.offer;
				await store?.putWorkshop(told);
				return told.offer;
			})
			.catch(() => told.offer)
			.then((latest) => {
				if (isWanted) setOffer(latest);
			});
		return () => {
			isWanted = false;
		};
	}, [told]);
	return offer;
}

/** Keeps what a page was told for the next time, which may be without a network. */
export function KeepWorkshop({ told }: { told: KeptWorkshop }) {
	useWorkshopKept(told);
	return null;
}
