import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Actions, Section } from "@/app/_ui/section";
import type { SpecContent } from "@/lib/advice/spec";
import { isOfOtherSettings, specInSettings } from "@/lib/advice/today";
import { MODEL_VERSION } from "@/lib/advice/version";
import { formatAmount } from "@/lib/present/money";
import { specChanges } from "@/lib/present/spec-changes";
import { currentSettings } from "@/lib/records/settings/loaders";
import type { Reader } from "@/lib/words/reader";
import { offerOf } from "@/lib/workshop/settings";

/**
 * Where the workshop's catalogue, densities or prices have changed since a spec was saved: what they
 * would make of it now, worked out when it is asked for. Nothing where they have not.
 */
export async function InTodaysSettings({
	stored,
	address,
	isAsked,
	reader,
}: {
	stored: SpecContent;
	/** Of the page, to ask for it. */
	address: string;
	isAsked: boolean;
	reader: Reader;
}) {
	const { say } = reader;
	const workshop = offerOf(await currentSettings());
	if (!isOfOtherSettings(stored, workshop)) return null;
	return (
		<Section
			title={say("settings.spec.title")}
			lead={say("settings.spec.lead")}
		>
			{stored.modelVersion !== MODEL_VERSION && (
				<p>{say("settings.spec.modelsToo")}</p>
			)}
			{isAsked ? (
				<Then
					stored={stored}
					now={specInSettings(stored, workshop)}
					reader={reader}
				/>
			) : (
				<Actions>
					<LinkButton href={`${address}?settings=today`} prefetch={false}>
						{say("settings.spec.ask")}
					</LinkButton>
				</Actions>
			)}
		</Section>
	);
}

function Then({
	stored,
	now,
	reader,
}: {
	stored: SpecContent;
	now: ReturnType<typeof specInSettings>;
	reader: Reader;
}) {
	const { say } = reader;
	if (!now.ok) return <p>{say("settings.spec.none")}</p>;
	const rows = [
		...specChanges(stored, now.value, reader).map((change) => ({ ...change })),
		...priceChange(stored, now.value, reader),
	];
	if (rows.length === 0) return <p>{say("settings.spec.same")}</p>;
	return (
		<DataTable
			caption={say("settings.spec.caption")}
			captionHidden
			columns={[
				{ key: "label", label: say("settings.spec.what") },
				{ key: "before", label: say("settings.spec.before") },
				{ key: "after", label: say("settings.spec.after") },
			]}
			rows={rows}
		/>
	);
}

const priceOf = ({ search }: SpecContent) => search?.options[0]?.price;

/** The estimates of the cues then and now, where both were searched for and differ. */
function priceChange(then: SpecContent, now: SpecContent, reader: Reader) {
	const before = priceOf(then);
	const after = priceOf(now);
	if (before === undefined || after === undefined) return [];
	const [was, is] = [before, after].map((price) =>
		formatAmount(price.totalMinor, price, reader),
	);
	return was === is
		? []
		: [
				{
					label: reader.say("settings.spec.priceRow"),
					before: was,
					after: is,
				},
			];
}
