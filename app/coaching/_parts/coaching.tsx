"use client";

import { useSearchParams } from "next/navigation";
import { useEffect, useState } from "react";
import type { KeptWorkshop } from "@/app/_device/records";
import { deviceStore } from "@/app/_device/tools";
import { deviceAddress } from "@/app/_device/use-begin";
import { Busy } from "@/app/_ui/busy";
import { useReader } from "@/app/_ui/preferences/reader";
import { useOnDevice } from "@/app/_ui/use-on-device";
import { DeviceFitting } from "./device-fitting";
import { DeviceHome } from "./device-home";

/** The address of a stop of a numbered fitting, as a page that could not be fetched. */
const FITTING_ADDRESS = /^\/fittings\/([1-9]\d{0,8})(?:\/([a-z-]+))?\/?$/;

/** One fitting on this device where the address names one, else all that is there. */
export function Coaching({ workshop }: { workshop: KeptWorkshop }) {
	const query = useSearchParams();
	// The page is kept for every address: which one it is, only the device knows.
	if (!useOnDevice()) return null;
	const id = query.get("fitting");
	const from = query.get("from");
	const [, number, step] = FITTING_ADDRESS.exec(from ?? "") ?? [];
	if (id !== null)
		return (
			<DeviceFitting
				key={id}
				fittingId={id}
				step={query.get("step") ?? ""}
				workshop={workshop}
			/>
		);
	if (number !== undefined)
		return (
			<ByNumber
				key={number}
				number={Number(number)}
				step={step ?? ""}
				from={from}
			/>
		);
	return <DeviceHome from={from} />;
}

/** Finds the fitting that a numbered page would have shown, and goes on under the device's own address. */
function ByNumber({
	number,
	step,
	from,
}: {
	number: number;
	step: string;
	from: string | null;
}) {
	const { say } = useReader();
	const [isMissing, setMissing] = useState(false);
	useEffect(() => {
		void (async () => {
			const fittings = (await (await deviceStore())?.fittings()) ?? [];
			const found = fittings.find((fitting) => fitting.number === number);
			if (found === undefined) setMissing(true);
			else window.history.replaceState(null, "", deviceAddress(found.id, step));
		})();
	}, [number, step]);
	return isMissing ? (
		<DeviceHome from={from} />
	) : (
		<Busy label={say("coaching.looking")} />
	);
}
