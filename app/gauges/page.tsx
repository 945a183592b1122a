import type { Metadata } from "next";
import { MeasureDrawing } from "@/app/_ui/measure-drawings";
import { Columns, PageHead, Section } from "@/app/_ui/section";
import styles from "./_parts/gauge.module.css";
import { PrintGauge } from "./_parts/print-gauge";
import { ScreenGauge } from "./_parts/screen-gauge";

export const metadata: Metadata = { title: "Gauges" };

/** The ring gauges on their own: on paper, and on this screen. */
export default function GaugesPage() {
	return (
		<>
			<PageHead
				title="Gauges"
				lead="Two ways to read the ring of thumb and forefinger at true size, without a cone or dowels."
			/>
			<Columns minRem={22}>
				<Section title="Printed" card>
					<div className={styles.sketch}>
						<MeasureDrawing name="ring-paper" />
					</div>
					<PrintGauge />
				</Section>
				<Section title="On this screen" card>
					<div className={styles.sketch}>
						<MeasureDrawing name="ring-screen" />
					</div>
					<ScreenGauge />
				</Section>
			</Columns>
		</>
	);
}
