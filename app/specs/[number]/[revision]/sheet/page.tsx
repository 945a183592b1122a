import type { Metadata } from "next";
import { headers } from "next/headers";
import { readReader } from "@/app/_ui/preferences/loaders";
import { sheetHead } from "@/lib/present/sheet-head";
import { currentSettings } from "@/lib/records/settings/loaders";
import { buildFromSpec, withBillets } from "@/lib/workshop/job-content";
import { NO_EXTRAS } from "@/lib/workshop/job-extras";
import { ExportLinks } from "../../../_parts/exports";
import { jobAddress } from "../../../_parts/job-address";
import { type SpecParams, specOf } from "../../../_parts/loaders";
import { publicAddress } from "../../../_parts/public-address";
import { SheetScreen } from "../../../_parts/sheet-screen";

export async function generateMetadata(props: SpecParams): Promise<Metadata> {
	const { number, revision } = await specOf(props);
	const { say } = await readReader();
	return { title: say("sheet.title", { number, revision }) };
}

/** What the bench builds from and checks against, on screen and on paper. */
export default async function SheetPage(props: SpecParams) {
	const { number, revision, latestRevision, fitting, content, createdAt } =
		await specOf(props);
	const reader = await readReader();
	const { header, stock } = await currentSettings();
	const origin = await publicAddress(await headers());
	const page = `/specs/${number}/${revision}`;
	return (
		<SheetScreen
			head={sheetHead(
				{
					number,
					revision,
					latestRevision,
					fittingNumber: fitting.number,
					playerName: fitting.player.name,
					savedAt: createdAt,
					modelVersion: content.modelVersion,
					workshop: header,
				},
				reader,
			)}
			build={withBillets(buildFromSpec(content))}
			atHand={{ extras: NO_EXTRAS, stock }}
			isInvented={fitting.isDemo}
			paper={header.paper}
			address={origin && jobAddress({ origin, number, revision })}
			back={{
				href: page,
				label: reader.say("sheet.backSpec"),
			}}
			files={<ExportLinks address={page} of="spec" reader={reader} />}
			reader={reader}
		/>
	);
}
