import type { ReactNode } from "react";
import { DataTable } from "@/app/_ui/data-table";
import type { SheetHead } from "@/lib/present/sheet-head";
import type { SheetRow } from "@/lib/present/sheet-rows";
import type { SheetView } from "@/lib/present/sheet-view";
import type { Reader } from "@/lib/words/reader";
import styles from "./job-sheet.module.css";

/** The whole sheet. Everything on it comes from the frozen build. */
export function JobSheet({
	head,
	mark,
	picture,
	code,
	view,
	reader: { say },
}: {
	head: SheetHead;
	/** Beside the title, such as that it is invented. */
	mark?: ReactNode;
	picture: ReactNode;
	/** The code back to the job. */
	code?: ReactNode;
	view: SheetView;
	reader: Reader;
}) {
	return (
		<article className={styles.sheet}>
			<header className={styles.head}>
				<div>
					<h1>
						{head.title} {mark}
					</h1>
					{head.lines.map((line) => (
						<p key={line}>{line}</p>
					))}
					{head.replaced !== null && (
						<p className={styles.replaced}>{head.replaced}</p>
					)}
				</div>
				{code}
			</header>
			<dl className={styles.summary}>
				{view.summary.map(({ label, value, allowed }) => (
					<div key={label}>
						<dt>{label}</dt>
						<dd>
							<strong>{value.main}</strong>
							<span>{value.other}</span>
							<span>{allowed}</span>
						</dd>
					</div>
				))}
			</dl>
			<div className={styles.picture}>{picture}</div>
			<Part title={say("sheet.stations.title")}>
				<DataTable
					caption={say("sheet.stations.caption")}
					columns={[
						{
							key: "fromButt",
							label: say("sheet.stations.fromButt"),
							numeric: true,
						},
						{
							key: "fromTip",
							label: say("sheet.stations.fromTip"),
							numeric: true,
						},
						{
							key: "diameter",
							label: say("sheet.stations.diameter"),
							numeric: true,
						},
						{ key: "tolerance", label: say("sheet.stations.allowed") },
						{ key: "note", label: say("sheet.stations.here") },
						{ key: "measured", label: say("sheet.stations.measured") },
					]}
					rows={view.stations.map(
						({ fromButt, fromTip, diameter, tolerance, note }) => ({
							fromButt: `${fromButt.main} · ${fromButt.other}`,
							fromTip: fromTip.main,
							diameter: `${diameter.main} · ${diameter.other}`,
							tolerance,
							note,
							measured: "",
						}),
					)}
				/>
			</Part>
			{view.picks.length > 0 && (
				<Part title={say("sheet.picks.title")}>
					<DataTable
						caption={say("sheet.picks.title")}
						captionHidden
						columns={[
							{ key: "use", label: say("sheet.picks.use") },
							{ key: "wood", label: say("sheet.picks.wood") },
							{ key: "grain", label: say("sheet.picks.grain") },
							{ key: "density", label: say("sheet.picks.density") },
							{ key: "picked", label: say("sheet.picks.picked") },
						]}
						rows={view.picks.map(({ density, atHand, ...row }) => ({
							...row,
							density: atHand === "" ? density : `${density}; ${atHand}`,
							picked: "",
						}))}
					/>
					<p>{say("sheet.picks.about")}</p>
				</Part>
			)}
			<div className={styles.columns}>
				<Part title={say("sheet.woods.title")}>
					<Rows rows={view.woods} />
				</Part>
				<Part title={say("sheet.splice.title")}>
					<Rows rows={view.splice} />
				</Part>
				<Part title={say("sheet.weight.title")}>
					<Rows rows={view.weight} />
				</Part>
				<Part title={say("sheet.fittings.title")}>
					<Rows rows={view.fittings} />
				</Part>
				<Part title={say("sheet.player.title")}>
					<Rows rows={view.player} />
				</Part>
			</div>
			<Part title={say("sheet.cautions.title")}>
				<ul>
					{view.cautions.map((line) => (
						<li key={line}>{line}</li>
					))}
				</ul>
				<p>{say("sheet.cautions.local")}</p>
			</Part>
			<div className={styles.steps}>
				<Part title={say("sheet.steps.title")}>
					<p>{view.steps.about}</p>
					<DataTable
						caption={say("sheet.steps.title")}
						captionHidden
						columns={[
							{ key: "step", label: say("sheet.steps.step") },
							{ key: "wait", label: say("sheet.steps.wait") },
							{ key: "done", label: say("sheet.steps.done") },
						]}
						rows={view.steps.rows.map((row) => ({ ...row, done: "" }))}
					/>
				</Part>
			</div>
			<Part title={say("sheet.finish.title")}>
				<ul>
					{view.finish.map((line) => (
						<li key={line}>{line}</li>
					))}
				</ul>
			</Part>
			<Part title={say("sheet.checks.title")}>
				<DataTable
					caption={say("sheet.checks.title")}
					captionHidden
					columns={[
						{ key: "check", label: say("sheet.checks.check") },
						{ key: "wanted", label: say("sheet.checks.wanted") },
						{ key: "allowed", label: say("sheet.checks.allowed") },
						{ key: "measured", label: say("sheet.checks.measured") },
						{ key: "by", label: say("sheet.checks.by") },
					]}
					rows={view.checks.map((check) => ({
						...check,
						measured: "",
						by: "",
					}))}
				/>
				{view.rules !== null && <p>{view.rules}</p>}
			</Part>
		</article>
	);
}

function Part({ title, children }: { title: string; children: ReactNode }) {
	return (
		<section className={styles.part}>
			<h2>{title}</h2>
			{children}
		</section>
	);
}

function Rows({ rows }: { rows: readonly SheetRow[] }) {
	return (
		<dl className={styles.rows}>
			{rows.map(({ label, value, note }) => (
				<div key={label}>
					<dt>{label}</dt>
					<dd>
						{value}
						{note !== undefined && <small>{note}</small>}
					</dd>
				</div>
			))}
		</dl>
	);
}
