import type { Metadata } from "next";
import Form from "next/form";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import fieldStyles from "@/app/_ui/fields/field.module.css";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Columns, PageHead, Section } from "@/app/_ui/section";
import {
	CAUSES,
	figureDifferences,
	figuresOf,
	inputOf,
} from "@/lib/advice/differences";
import type { Refusal } from "@/lib/numerics/outcome";
import { answerRows, causeRows, figureRows } from "@/lib/present/compare-view";
import { refusalView } from "@/lib/present/notices";
import { listComparable } from "@/lib/records/diary/loaders";
import { getPlayer } from "@/lib/records/players/loaders";
import type { Reader } from "@/lib/words/reader";
import styles from "../_parts/timeline.module.css";
import { type SideOption, sideOf, sideOptions } from "./sides";

interface Params {
	params: Promise<{ id: string }>;
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("compare.title") };
}

/** Any two of a player's fittings and specs side by side, and why their figures differ. */
export default async function ComparePage({ params, searchParams }: Params) {
	const player = await getPlayer((await params).id);
	if (player === null) notFound();
	const reader = await readReader();
	const { say } = reader;
	const asked = await searchParams;
	const options = sideOptions(await listComparable(player.id), reader);
	const chosen = (name: "one" | "other") =>
		options.find(({ value }) => value === asked[name]);
	const one = chosen("one");
	const other = chosen("other");
	const isAsked = asked.one !== undefined || asked.other !== undefined;
	return (
		<>
			<p>
				<Link href={`/players/${player.id}`}>
					{say("compare.back", { name: player.name })}
				</Link>
			</p>
			<PageHead
				title={say("compare.pageTitle", { name: player.name })}
				lead={say("compare.lead")}
			/>
			{options.length < 2 ? (
				<EmptyState title={say("compare.tooFew")} />
			) : (
				<Form action={`/players/${player.id}/compare`}>
					<div className={styles.choice}>
						<Columns>
							<SideSelect
								name="one"
								label={say("compare.one")}
								options={options}
								value={(one ?? options[1])?.value}
							/>
							<SideSelect
								name="other"
								label={say("compare.other")}
								options={options}
								value={(other ?? options[0])?.value}
							/>
						</Columns>
						<div>
							<Button look="main" type="submit">
								{say("compare.show")}
							</Button>
						</div>
					</div>
				</Form>
			)}
			{isAsked && (one === undefined || other === undefined) && (
				<Notice kind="caution">{say("compare.notSpec")}</Notice>
			)}
			{one !== undefined && other !== undefined && (
				<Compared one={one} other={other} reader={reader} />
			)}
		</>
	);
}

function SideSelect({
	name,
	label,
	options,
	value,
}: {
	name: string;
	label: string;
	options: readonly SideOption[];
	value: string | undefined;
}) {
	return (
		<label className={fieldStyles.field}>
			<span className={fieldStyles.label}>{label}</span>
			<select
				className={fieldStyles.control}
				name={name}
				key={value}
				defaultValue={value}
			>
				{options.map((option) => (
					<option key={option.value} value={option.value}>
						{option.label}
					</option>
				))}
			</select>
		</label>
	);
}

async function Compared({
	one,
	other,
	reader,
}: {
	one: SideOption;
	other: SideOption;
	reader: Reader;
}) {
	const { say } = reader;
	const sides = [await sideOf(one), await sideOf(other)] as const;
	const differences = figureDifferences(...sides);
	const alone = differences.ok
		? null
		: ([figuresOf(sides[0]), figuresOf(sides[1])] as const);
	const figures = differences.ok
		? differences.value
		: alone?.[0].ok && alone[1].ok
			? { one: alone[0].value, other: alone[1].value }
			: null;
	const rows = answerRows(inputOf(sides[0]), inputOf(sides[1]), reader);
	return (
		<>
			<Section title={say("compare.figures")} lead={say("compare.today")}>
				{figures !== null && (
					<DataTable
						caption={say("compare.figures")}
						captionHidden
						narrow="stack"
						columns={[
							{ key: "figure", label: say("compare.column") },
							{ key: "one", label: one.label, numeric: true },
							{ key: "other", label: other.label, numeric: true },
							{
								key: "difference",
								label: say("compare.difference"),
								numeric: true,
							},
						]}
						rows={figureRows(figures, reader).map((row) => ({ ...row }))}
					/>
				)}
				{alone?.map((side, i) =>
					side.ok ? null : (
						<RefusalNotice
							key={i === 0 ? "one" : "other"}
							title={say("compare.cannotSide", {
								name: i === 0 ? one.label : other.label,
							})}
							refusals={side.refusals}
							reader={reader}
						/>
					),
				)}
			</Section>
			<Section title={say("compare.why")} lead={say("compare.order")}>
				{differences.ok ? (
					<>
						<DataTable
							caption={say("compare.why")}
							captionHidden
							columns={[
								{ key: "figure", label: say("compare.column") },
								...CAUSES.map((cause) => ({
									key: cause,
									label: say(`compare.cause.${cause}`),
									numeric: true,
								})),
								{
									key: "difference",
									label: say("compare.difference"),
									numeric: true,
								},
							]}
							rows={causeRows(differences.value, reader).map((row) => ({
								...row,
							}))}
						/>
						<p>{say("compare.rounding")}</p>
					</>
				) : (
					<RefusalNotice
						title={say("compare.cannot")}
						refusals={differences.refusals}
						reader={reader}
					/>
				)}
			</Section>
			<Section
				title={say("compare.answers")}
				lead={say(rows.length === 0 ? "compare.same" : "compare.onlyDiffering")}
			>
				{rows.length > 0 && (
					<DataTable
						caption={say("compare.answers")}
						captionHidden
						columns={[
							{ key: "question", label: say("compare.question") },
							{ key: "one", label: one.label },
							{ key: "other", label: other.label },
						]}
						rows={rows.map((row) => ({ ...row }))}
					/>
				)}
			</Section>
		</>
	);
}

function RefusalNotice({
	title,
	refusals,
	reader,
}: {
	title: string;
	refusals: readonly Refusal[];
	reader: Reader;
}) {
	return (
		<Notice kind="caution" title={title}>
			<ul>
				{refusals.map((refusal) => {
					const { text } = refusalView(refusal, reader);
					return <li key={text}>{text}</li>;
				})}
			</ul>
		</Notice>
	);
}
