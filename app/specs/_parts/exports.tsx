import { Section } from "@/app/_ui/section";
import type { Reader } from "@/lib/words/reader";
import styles from "./exports.module.css";

const FILES = [
	{ path: "sheet.pdf?paper=a4", label: "pdf", about: "pdfAbout" },
	{ path: "sheet.pdf?paper=letter", label: "letter", about: "letterAbout" },
	{ path: "stations.csv", label: "stations", about: "stationsAbout" },
	{ path: "profile.dxf", label: "profile", about: "profileAbout" },
] as const;
const WHOLE = {
	spec: { path: "spec.json", label: "spec", about: "specAbout" },
	job: { path: "job.json", label: "job", about: "jobAbout" },
} as const;

interface FilesOf {
	/** Address of the saved revision or the job, whose files lie under it. */
	readonly address: string;
	readonly of: keyof typeof WHOLE;
	readonly reader: Reader;
}

/** What a saved revision or a job can be taken away as. */
export const Exports = (files: FilesOf) => (
	<Section title={files.reader.say("sheet.files.title")}>
		<ExportLinks {...files} />
	</Section>
);

/** Plain links: a file is not a page to go to. */
export const ExportLinks = ({ address, of, reader: { say } }: FilesOf) => (
	<ul className={styles.files} aria-label={say("sheet.files.title")}>
		{[...FILES, WHOLE[of]].map(({ path, label, about }) => (
			<li key={path}>
				<a href={`${address}/${path}`}>{say(`sheet.files.${label}`)}</a>
				<span>{say(`sheet.files.${about}`)}</span>
			</li>
		))}
	</ul>
);
