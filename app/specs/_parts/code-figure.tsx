import type { JobCode } from "@/lib/documents/job-code";
import styles from "./job-sheet.module.css";

/** The way back from paper: read by a phone, and by eye below it. Black on white in every theme. */
export const CodeFigure = ({
	code,
	label,
}: {
	code: JobCode;
	label: string;
}) => (
	<figure className={styles.code}>
		<svg
			viewBox={`0 0 ${code.sizeModules} ${code.sizeModules}`}
			shapeRendering="crispEdges"
			role="img"
			aria-label={label}
		>
			<rect width="100%" height="100%" fill="#fff" />
			<path d={code.path} fill="#000" />
		</svg>
		<figcaption>{code.address}</figcaption>
	</figure>
);
