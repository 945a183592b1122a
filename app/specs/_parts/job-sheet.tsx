import type { ReactNode } from "react";
import { DataTable } from "@/app/_ui/data-table";
import type { SheetRow } from "@/lib/present/sheet-rows";
import type { SheetView } from "@/lib/present/sheet-view";
import styles from "./job-sheet.module.css";

/** The whole sheet. Everything on it comes from the frozen spec. */
export function JobSheet({
	title,
	lines,
	picture,
	code,
	view,
}: {
	title: ReactNode;
	lines: readonly string[];
	picture: ReactNode;
	/** The code back to the job. */
	code?: ReactNode;
	view: SheetView;
}) {
	return (
		<article className={styles.sheet}>
			<header className={styles.head}>
				<div>
					<h1>{title}</h1>
					{lines.map((line) => (
						<p key={line}>{line}</p>
					))}
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
			<Part title="Diameters at stations">
				<DataTable
					caption="Diameters at stations, before finish"
					columns={[
						{ key: "fromButt", label: "From the butt end", numeric: true },
						{ key: "fromTip", label: "From the tip", numeric: true },
						{ key: "diameter", label: "Diameter", numeric: true },
						{ key: "tolerance", label: "Allowed" },
						{ key: "note", label: "Here" },
						{ key: "measured", label: "Measured" },
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
			<div className={styles.columns}>
				<Part title="Woods">
					<Rows rows={view.woods} />
				</Part>
				<Part title="Splice, in glue order">
					<Rows rows={view.splice} />
				</Part>
				<Part title="Weight">
					<Rows rows={view.weight} />
				</Part>
				<Part title="Tip, ferrule, joint, butt end">
					<Rows rows={view.fittings} />
				</Part>
				<Part title="Player">
					<Rows rows={view.player} />
				</Part>
			</div>
			<Part title="Finish">
				<ul>
					{view.finish.map((line) => (
						<li key={line}>{line}</li>
					))}
				</ul>
			</Part>
			<Part title="Cautions">
				<ul>
					{view.cautions.map((line) => (
						<li key={line}>{line}</li>
					))}
				</ul>
				<p>Local codes and licensed practice come first.</p>
			</Part>
			<Part title="Check before handing over">
				<DataTable
					caption="Check before handing over"
					captionHidden
					columns={[
						{ key: "check", label: "Check" },
						{ key: "wanted", label: "Wanted" },
						{ key: "allowed", label: "Allowed" },
						{ key: "measured", label: "Measured" },
						{ key: "by", label: "By, date" },
					]}
					rows={view.checks.map((check) => ({
						...check,
						measured: "",
						by: "",
					}))}
				/>
				{view.rules.length > 0 && (
					<p>
						Rules of the game:{" "}
						{view.rules
							.map(
								({ rule, ok, source }) =>
									`${rule} ${ok ? "kept" : "broken"} (${source})`,
							)
							.join("; ")}
						.
					</p>
				)}
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
