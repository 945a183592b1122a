"use client";

import { useWorkerState } from "@/app/_device/use-worker";
import { noteWorker } from "@/app/_device/worker-state";
import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Section } from "@/app/_ui/section";

/** Whether the app opens here without a network, and its place on the home screen. */
export function InstallPart() {
	const { say } = useReader();
	const { ready, install } = useWorkerState();
	return (
		<Section title={say("coaching.install.title")}>
			<p role="status">{say(`coaching.install.${ready ?? "coming"}`)}</p>
			<p>{say("coaching.install.about")}</p>
			{install !== null && (
				<Actions>
					<Button
						onClick={() => {
							noteWorker({ install: null });
							void install.prompt();
						}}
					>
						{say("coaching.install.button")}
					</Button>
				</Actions>
			)}
		</Section>
	);
}
