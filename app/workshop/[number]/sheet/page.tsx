import type { Metadata } from "next";
import { headers } from "next/headers";
import { readReader } from "@/app/_ui/preferences/loaders";
import { ExportLinks } from "@/app/specs/_parts/exports";
import { publicAddress } from "@/app/specs/_parts/public-address";
import { SheetScreen } from "@/app/specs/_parts/sheet-screen";
import { sheetFrame } from "@/app/workshop/_parts/job-sheet";
import { type JobParams, jobOf } from "@/app/workshop/_parts/loaders";

export async function generateMetadata(props: JobParams): Promise<Metadata> {
	const job = await jobOf(props);
	const { head } = await sheetFrame(job, await readReader(), null);
	return { title: head.title };
}

/** What the bench builds from and checks against, on screen and on paper. */
export default async function JobSheetPage(props: JobParams) {
	const job = await jobOf(props);
	const reader = await readReader();
	const origin = await publicAddress(await headers());
	const { header, ...sheet } = await sheetFrame(job, reader, origin);
	const address = `/workshop/${job.number}`;
	return (
		<SheetScreen
			{...sheet}
			isInvented={job.isDemo}
			paper={header.paper}
			back={{ href: address, label: reader.say("sheet.back") }}
			files={<ExportLinks address={address} of="job" reader={reader} />}
			reader={reader}
		/>
	);
}
