import { Section } from "@/app/_ui/section";
import styles from "./exports.module.css";

const FILES = [
	{
		path: "sheet.pdf?paper=a4",
		label: "Job sheet, A4",
		what: "PDF of two pages at most, readable in black and white",
	},
	{
		path: "sheet.pdf?paper=letter",
		label: "Job sheet, Letter",
		what: "The same on American paper",
	},
	{
		path: "stations.csv",
		label: "Diameters at stations",
		what: "CSV for a spreadsheet, millimetres and inches",
	},
	{
		path: "profile.dxf",
		label: "Turned outline",
		what: "DXF drawing at full size, millimetres",
	},
	{
		path: "spec.json",
		label: "All of the spec",
		what: "JSON for another program, by a published schema",
	},
] as const;

interface Revision {
	readonly number: number;
	readonly revision: number;
}

/** What a saved revision can be taken away as. */
export const Exports = (revision: Revision) => (
	<Section title="Files for the bench">
		<ExportLinks {...revision} />
	</Section>
);

/** Plain links: a file is not a page to go to. */
export const ExportLinks = ({ number, revision }: Revision) => (
	<ul className={styles.files} aria-label="Files for the bench">
		{FILES.map(({ path, label, what }) => (
			<li key={path}>
				<a href={`/specs/${number}/${revision}/${path}`}>{label}</a>
				<span>{what}</span>
			</li>
		))}
	</ul>
);
