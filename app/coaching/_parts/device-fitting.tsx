"use client";

import { useCallback, useEffect, useState } from "react";
import type { KeptFitting, KeptWorkshop } from "@/app/_device/records";
import { deviceStore } from "@/app/_device/tools";
import { deviceAddress } from "@/app/_device/use-begin";
import { Busy } from "@/app/_ui/busy";
import { LinkButton } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { useReader } from "@/app/_ui/preferences/reader";
import { FittingDesk } from "@/app/fittings/_parts/desk";
import { FittingHead } from "@/app/fittings/_parts/fitting-head";
import { FittingStep } from "@/app/fittings/_parts/fitting-step";
import { QUESTION_STEPS, RECOMMENDATION } from "@/app/fittings/_parts/steps";
import { DeviceWay } from "@/app/fittings/_parts/way";
import { useWorkshopKept } from "./use-workshop";

const STOPS: readonly string[] = [
	...QUESTION_STEPS.map(({ id }) => id),
	RECOMMENDATION.id,
];

/** A session as this device has it, whether the server answers or not. */
export function DeviceFitting({
	fittingId,
	step,
	workshop: told,
}: {
	fittingId: string;
	step: string;
	workshop: KeptWorkshop;
}) {
	const { say } = useReader();
	const [found, setFound] = useState<KeptFitting | null | "looking">("looking");
	const workshop = useWorkshopKept(told);

	useEffect(() => {
		let isWanted = true;
		void (async () => {
			const kept = (await (await deviceStore())?.fitting(fittingId)) ?? null;
			if (isWanted)
				setFound(kept && { ...kept, openedAt: new Date().toISOString() });
		})();
		return () => {
			isWanted = false;
		};
	}, [fittingId]);

	const addressOf = useCallback(
		(stop: string) => deviceAddress(fittingId, stop),
		[fittingId],
	);
	if (found === "looking" || workshop === null)
		return <Busy label={say("coaching.looking")} />;
	if (found === null)
		return (
			<EmptyState
				title={say("coaching.notHere")}
				action={
					<LinkButton href="/coaching">{say("coaching.title")}</LinkButton>
				}
			/>
		);
	return (
		<FittingDesk fitting={found} workshop={workshop}>
			<DeviceWay
				current={STOPS.includes(step) ? step : (STOPS[0] ?? "")}
				addressOf={addressOf}
			>
				<FittingHead />
				<FittingStep />
			</DeviceWay>
		</FittingDesk>
	);
}
