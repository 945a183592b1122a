import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { readReader } from "@/app/_ui/preferences/loaders";
import { isFieldName } from "@/lib/forms/device-sync";
import { listChanges } from "@/lib/records/fittings/changes";
import { getFitting } from "@/lib/records/fittings/loaders";
import { ChangeList } from "../../../_parts/change-list";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("offline.changes.title") };
}

/** More than anybody reads through; the newest are the ones looked for. */
const SHOWN = 200;

/** Every value an answer ever had, whose word it was and when: none is lost, and each can be used again. */
export default async function ChangesPage({
	params,
}: {
	params: Promise<{ number: string }>;
}) {
	const { number } = await params;
	const fitting = /^[1-9]\d{0,8}$/.test(number)
		? await getFitting(Number(number))
		: null;
	if (fitting === null) notFound();
	const changes = await listChanges(fitting.id, SHOWN);
	return (
		<ChangeList
			changes={changes.flatMap(
				({ id, field, after, overrode, deviceId, deviceName, by, at }) =>
					isFieldName(field)
						? [
								{
									id,
									field,
									after,
									hasOverridden: overrode !== null,
									from: { deviceId, deviceName, by, at: at.toISOString() },
								},
							]
						: [],
			)}
		/>
	);
}
