import type { Metadata } from "next";
import { MeasureDrawing } from "@/app/_ui/measure-drawings";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Columns, PageHead, Section } from "@/app/_ui/section";
import styles from "./_parts/gauge.module.css";
import { PrintGauge } from "./_parts/print-gauge";
import { ScreenGauge } from "./_parts/screen-gauge";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("gauges.title") };
}

/** The ring gauges on their own: on paper, and on this screen. */
export default async function GaugesPage() {
	const { say } = await readReader();
	return (
		<>
			<PageHead title={say("gauges.title")} lead={say("gauges.lead")} />
			<Columns minRem={22}>
				<Section title={say("gauges.printed")} card>
					<div className={styles.sketch}>
						<MeasureDrawing name="ring-paper" />
					</div>
					<PrintGauge />
				</Section>
				<Section title={say("gauges.screen")} card>
					<div className={styles.sketch}>
						<MeasureDrawing name="ring-screen" />
					</div>
					<ScreenGauge />
				</Section>
			</Columns>
		</>
	);
}
