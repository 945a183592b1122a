import exportStyles from "@/app/specs/_parts/exports.module.css";
import type { Reader } from "@/lib/words/reader";

const FILES = [
	{ path: "sheet.pdf?paper=a4", label: "a4", about: "pdfAbout" },
	{ path: "sheet.pdf?paper=letter", label: "letter", about: "pdfAbout" },
	{ path: "stations.csv", label: "stations", about: "stationsAbout" },
	{ path: "profile.dxf", label: "profile", about: "profileAbout" },
] as const;

/** What a job can be taken away as. Plain links: a file is not a page to go to. */
export function JobFiles({
	number,
	reader: { say },
}: {
	number: number;
	reader: Reader;
}) {
	return (
		<ul className={exportStyles.files} aria-label={say("job.files.title")}>
			{FILES.map(({ path, label, about }) => (
				<li key={path}>
					<a href={`/workshop/${number}/${path}`}>
						{say(`job.files.${label}`)}
					</a>
					<span>{say(`job.files.${about}`)}</span>
				</li>
			))}
		</ul>
	);
}
