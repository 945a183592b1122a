import type { Metadata } from "next";
import { cookies } from "next/headers";
import { LinkButton } from "@/app/_ui/button";
import { readReader } from "@/app/_ui/preferences/loaders";
import { SearchForm } from "@/app/_ui/search-form";
import { Actions, PageHead, Stack } from "@/app/_ui/section";
import { countJobs, listJobs } from "@/lib/records/jobs/loaders";
import { today } from "@/lib/records/settings/loaders";
import { KEYS_COOKIE } from "./_parts/bench-choices";
import {
	afterIn,
	asked,
	queryOf,
	queueHref,
	readFilter,
	type SearchParams,
} from "./_parts/queue-filter";
import { QueueList } from "./_parts/queue-list";
import { QueueWays } from "./_parts/queue-ways";
import { SingleKeys } from "./_parts/single-keys";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("workshop.title") };
}

/** What is asked for, on the bench and due. */
export default async function WorkshopPage({
	searchParams,
}: {
	searchParams: Promise<SearchParams>;
}) {
	const params = await searchParams;
	const reader = await readReader();
	const { say } = reader;
	const filter = readFilter(params);
	const day = today();
	const after = afterIn(params);
	const { jobs, next } = await listJobs({
		...asked(filter),
		today: day,
		...(after === undefined ? {} : { after }),
	});
	const { search, ...others } = filter;
	const { q: _, ...kept } = queryOf({ ...others, search });
	return (
		<Stack>
			<PageHead
				title={say("workshop.title")}
				lead={say("workshop.lead")}
				actions={
					<>
						<LinkButton href="/workshop/woods">{say("woods.title")}</LinkButton>
						<LinkButton href="/workshop/settings">
							{say("settings.title")}
						</LinkButton>
					</>
				}
			/>
			<SearchForm
				action="/workshop"
				name="q"
				label={say("workshop.search")}
				value={search}
				kept={kept}
			/>
			<QueueWays
				counts={await countJobs(day)}
				filter={filter}
				reader={reader}
			/>
			<QueueList jobs={jobs} filter={filter} today={day} reader={reader} />
			{(next !== null || after !== undefined) && (
				<Actions>
					{next !== null && (
						<LinkButton
							href={{
								pathname: "/workshop",
								query: { ...queryOf(filter), after: next },
							}}
						>
							{say("workshop.more")}
						</LinkButton>
					)}
					{after !== undefined && (
						<LinkButton href={queueHref(filter)}>
							{say("workshop.first")}
						</LinkButton>
					)}
				</Actions>
			)}
			<SingleKeys isOn={(await cookies()).get(KEYS_COOKIE)?.value !== "off"} />
		</Stack>
	);
}
