import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { Actions, Section } from "@/app/_ui/section";
import { densityBand, densityText, stageName } from "@/lib/present/check-view";
import { formatDay } from "@/lib/present/dates";
import { woodName } from "@/lib/present/labels";
import { refusalView } from "@/lib/present/notices";
import type { EvidenceRecord } from "@/lib/records/wood-evidence/data";
import type { Reader } from "@/lib/words/reader";
import { EvidenceSwitch, TakeButton } from "./evidence-buttons";
import type { woodsSaidBy } from "./loaders";

type Said = NonNullable<Awaited<ReturnType<typeof woodsSaidBy>>>;

/** What the weighed cue says of its woods, before and after in each wood's band. */
export function WoodsSaid({ told, reader }: { told: Said; reader: Reader }) {
	const { say } = reader;
	const { check, said, woods } = told;
	const doubt = said.ok ? said.value.doubt : null;
	const isAsked =
		doubt !== null && woods.every(({ evidence }) => evidence === null);
	return (
		<Section
			title={say("checks.woodsSaid.title")}
			lead={say("checks.woodsSaid.lead", {
				stage: stageName(check.stage, reader),
				when: formatDay(check.createdAt, reader),
			})}
		>
			{!said.ok &&
				said.refusals.map((refusal) => (
					<p key={refusal.code}>{refusalView(refusal, reader).text}</p>
				))}
			{isAsked && (
				<Notice kind="caution" title={say("checks.woodsSaid.doubt")}>
					<p>{refusalView(doubt, reader).text}</p>
					<p>{say("checks.woodsSaid.doubtAbout")}</p>
					<TakeButton checkId={check.id} />
				</Notice>
			)}
			{woods.length > 0 && (
				<DataTable
					caption={say("checks.woodsSaid.caption")}
					captionHidden
					narrow="stack"
					columns={[
						{ key: "wood", label: say("checks.woodsSaid.wood") },
						{ key: "expected", label: say("checks.woodsSaid.expected") },
						{ key: "implied", label: say("checks.woodsSaid.implied") },
						{ key: "before", label: say("checks.woodsSaid.before") },
						{ key: "after", label: say("checks.woodsSaid.after") },
						{ key: "state", label: say("checks.woodsSaid.state") },
					]}
					rows={woods.map(({ wood, kgM3, sd, ...one }) => ({
						wood: woodName(wood, reader),
						expected: densityText(one.expected, reader),
						implied: densityText({ kgM3, sd }, reader),
						before: densityBand(one.before, reader),
						after: densityBand(one.after, reader),
						state:
							one.evidence === null ? (
								say("checks.woodsSaid.not")
							) : (
								<>
									{evidenceState(one.evidence, reader)}{" "}
									<EvidenceSwitch
										id={one.evidence.id}
										isCounted={one.evidence.withdrawnAt === null}
										wood={woodName(wood, reader)}
									/>
								</>
							),
					}))}
				/>
			)}
			<Actions>
				<LinkButton href="/workshop/woods">{say("checks.toWoods")}</LinkButton>
			</Actions>
		</Section>
	);
}

export const evidenceState = (
	{ by, createdAt, withdrawnAt, withdrawnBy }: EvidenceRecord,
	reader: Reader,
): string =>
	withdrawnAt === null
		? reader.say("checks.woodsSaid.counts", {
				by,
				when: formatDay(createdAt, reader),
			})
		: reader.say("checks.woodsSaid.withdrawn", {
				by: withdrawnBy ?? "",
				when: formatDay(withdrawnAt, reader),
			});
